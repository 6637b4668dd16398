import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

/** The module that every dynamic import of a build goes through, as Vite names it. */
const LOADER_ID = /^\0vite\/preload-helper\.js$/

const OWN_LOADER = fileURLToPath(new URL('./fetch-then-import.ts', import.meta.url))

/** Has dynamic imports go through `fetch-then-import.ts`, so that a part that did not load can be asked for again. */
export function retryLazyParts(): Plugin {
  let replaced = false
  return {
    name: 'retry-lazy-parts',
    enforce: 'pre',
    apply: 'build',
    config: () => ({
      build: {
        modulePreload: {
          // A part of one file is not listed by itself.
          resolveDependencies: (file, others, { hostType }) =>
            hostType === 'js' ? [...new Set([file, ...others])] : others,
        },
      },
    }),
    load: {
      filter: { id: LOADER_ID },
      handler: () => {
        replaced = true
        return `export { fetchThenImport as __vitePreload } from ${JSON.stringify(OWN_LOADER)}`
      },
    },
    buildEnd(error) {
      if (!error && !replaced)
        throw new Error(`no module of the build matches ${LOADER_ID}: dynamic imports bypass ${OWN_LOADER}`)
    },
  }
}
