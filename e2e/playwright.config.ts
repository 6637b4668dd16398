import { defineConfig } from '@playwright/test'
import { CHROMIUM } from '../test/setup/chromium'
import { ORIGIN } from './setup/port'

/** What waits for a real audio output to play, or measures time: it has the machine to itself. */
const REAL_TIME = ['blind-trial', 'first-load', 'lost-output', 'real-time'].map(
  (name) => `**/${name}.spec.ts`,
)

/** What one worker is busy with for longest: it begins first, so that the others have not long ended when it does. */
const LONGEST = ['steady-settings', 'sweeps'].map((name) => `**/${name}.spec.ts`)

export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  // For waiting, so that a busy machine fails no test: what is measured is bounded in the tests themselves.
  timeout: 240_000,
  expect: { timeout: 30_000 },
  workers: 2,
  fullyParallel: true,
  reporter: 'list',
  use: {
    baseURL: ORIGIN,
    viewport: { width: 1440, height: 900 },
    launchOptions: CHROMIUM,
  },
  projects: [
    { name: 'longest', testMatch: LONGEST },
    { name: 'side-by-side', testIgnore: [...LONGEST, ...REAL_TIME] },
    // `npm run browser` runs it by itself, after the other.
    { name: 'real-time', testMatch: REAL_TIME, workers: 1 },
  ],
  webServer: {
    command: 'npx tsx e2e/setup/server/main.ts',
    cwd: '..',
    url: ORIGIN,
    reuseExistingServer: false,
  },
})
