import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'
import { leanD3 } from './src/build/lean-d3.ts'
import { retryLazyParts } from './src/build/retry-lazy-parts.ts'
import { thirdPartyNotices } from './src/build/third-party-notices.ts'

const fromRoot = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** The development server puts styles and scripts into the page itself, which the page's policy forbids. */
const withoutPolicyWhileDeveloping: Plugin = {
  name: 'without-policy-while-developing',
  apply: (_, { command, isPreview }) => command === 'serve' && !isPreview,
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
}

const notices = thirdPartyNotices()

export default defineConfig({
  // Relative addresses, so that the built folder works under any path of any static host.
  base: './',
  plugins: [react(), withoutPolicyWhileDeveloping, leanD3(), retryLazyParts(), notices.ofPage],
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    // What the page starts with is one file, though later parts share some of it: smaller, and one request.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'index', tags: ['$initial'] }] } } },
  },
  css: { modules: { generateScopedName: '[hash:base64:5]' } },
  worker: { format: 'es', plugins: () => [notices.ofWorkers] },
  preview: { host: '127.0.0.1', port: 4173 },
  test: {
    // ebur128-wasm ships no entry for Node; its bundler-free build works as it is.
    alias: { 'ebur128-wasm': fromRoot('./node_modules/ebur128-wasm/ebur128_wasm.js') },
    server: { deps: { inline: ['ebur128-wasm'] } },
    // So that a busy machine fails no test: nothing here measures time.
    testTimeout: 600_000,
    globalSetup: 'test/setup/demo-folder.ts',
    setupFiles: ['test/setup/same-samples.ts'],
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          environment: 'node',
          include: ['test/**/*.test.ts'],
          exclude: ['test/view/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'view',
          environment: 'happy-dom',
          include: ['test/view/**/*.test.tsx'],
          setupFiles: ['test/setup/patient-queries.ts'],
        },
      },
    ],
  },
})
