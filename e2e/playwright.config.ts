import { defineConfig } from '@playwright/test'
import { CHROMIUM } from '../test/setup/chromium'
import { ORIGIN } from './setup/port'

/** Tag of what waits for a real audio output to play, or measures time: it has the machine to itself. */
const REAL_TIME = /@real-time/

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
    { name: 'side-by-side', testIgnore: LONGEST, grepInvert: REAL_TIME },
    // By itself, after the others: one start and one server for all.
    { name: 'real-time', grep: REAL_TIME, workers: 1, dependencies: ['longest', 'side-by-side'] },
  ],
  webServer: {
    command: 'npx tsx e2e/setup/server/main.ts',
    cwd: '..',
    url: ORIGIN,
    reuseExistingServer: false,
  },
})
