import { defineConfig } from '@playwright/test'
import { CHROMIUM } from '../test/setup/chromium'
import { PORT } from './setup/port'

export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  timeout: 90_000,
  workers: 1,
  reporter: 'list',
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    viewport: { width: 1440, height: 900 },
    launchOptions: CHROMIUM,
  },
  webServer: {
    command: `npx vite preview --port ${PORT} --strictPort`,
    cwd: '..',
    url: `http://127.0.0.1:${PORT}`,
    reuseExistingServer: false,
  },
})
