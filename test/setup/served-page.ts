import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { build, preview } from 'vite'
import { CHROMIUM } from './chromium'

/** With these a page is alone in its process: only then are its clocks fine (5 us) and its memory told to it. */
const ISOLATED = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
}

/** Builds the page in `root` with everything it imports, serves it, opens it in Chromium and hands it to `use`. */
export async function withServedPage<Result>(
  root: string,
  port: number,
  use: (page: Page) => Promise<Result>,
): Promise<Result> {
  const outDir = mkdtempSync(join(tmpdir(), 'evenhand-page-'))
  const config = {
    root,
    configFile: false as const,
    base: './',
    logLevel: 'error' as const,
    worker: { format: 'es' as const },
  }
  await build({ ...config, build: { outDir, emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 } })
  const server = await preview({
    ...config,
    build: { outDir },
    preview: { host: '127.0.0.1', port, headers: ISOLATED },
  })
  const browser = await chromium.launch(CHROMIUM)
  try {
    const page = await browser.newPage()
    // Where the port is taken the server has gone to the next.
    await page.goto(server.resolvedUrls?.local[0] ?? '')
    return await use(page)
  } finally {
    await browser.close()
    await server.close()
    rmSync(outDir, { recursive: true })
  }
}
