import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

const NUMBERS_ONLY = fileURLToPath(new URL('./numbers-only.ts', import.meta.url))

/** A curve of d3-shape that is made by a call when the module is evaluated. */
const MADE_BY_CALL = '= (function custom('

/**
 * Leaves out what nobody draws with: of d3-scale's helpers all but numbers, and of d3-shape the curves, whose making by
 * calls keeps them in the page though the calls do nothing else.
 */
export function leanD3(): Plugin {
  return {
    name: 'lean-d3',
    enforce: 'pre',
    apply: 'build',
    resolveId: {
      filter: { id: /^d3-(interpolate|format)$/ },
      handler: () => NUMBERS_ONLY,
    },
    transform: {
      filter: { id: /d3-shape\.mjs$/ },
      handler(code) {
        if (!code.includes(MADE_BY_CALL)) this.error('d3-shape makes its curves in another way: look again')
        return {
          code: code.replaceAll(MADE_BY_CALL, MADE_BY_CALL.replace('(', '/* @__PURE__ */ (')),
          map: null,
        }
      },
    },
  }
}
