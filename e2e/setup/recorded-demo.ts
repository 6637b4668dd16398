import type { Page } from '@playwright/test'

/** Where the tests' server keeps a recording of the demo. */
export const RECORDED_DEMO = '/recorded-demo'

/**
 * Gives the page the demo as it was sung when the server started: singing it in each page takes longer than all else
 * that opening does. `demo.spec.ts` holds that the real worker sings the same.
 */
export async function provideRecordedDemo(page: Page): Promise<void> {
  await page.route(/\/demo\.worker-[^/]*\.js$/, (route) =>
    route.continue({ url: new URL(RECORDED_DEMO, route.request().url()).href }),
  )
}
