import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { build, preview } from 'vite'
import type { PageResult } from './page/page'

const PORT = 4175

/** Builds the bench page, opens it in Chromium and has it compare the core with the browser's native nodes. */
export async function benchInBrowser(): Promise<PageResult[]> {
  const outDir = mkdtempSync(join(tmpdir(), 'evenhand-bench-'))
  const root = fileURLToPath(new URL('./page', import.meta.url))
  const config = {
    root,
    configFile: false as const,
    base: './',
    logLevel: 'warn' as const,
    worker: { format: 'es' as const },
  }
  await build({ ...config, build: { outDir, target: 'es2022', assetsInlineLimit: 0 } })
  const server = await preview({ ...config, build: { outDir }, preview: { host: '127.0.0.1', port: PORT } })
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking'],
  })
  try {
    const page = await browser.newPage()
    await page.goto(`http://127.0.0.1:${PORT}/`)
    await page.waitForFunction(() => window.runBench !== undefined)
    return await page.evaluate(async () => (await window.runBench?.()) ?? [])
  } finally {
    await browser.close()
    await server.close()
    rmSync(outDir, { recursive: true })
  }
}
