import { expect, test } from '@playwright/test'
import { demoTake } from '../src/demo'
import { differenceDbfs, expectFigures } from './setup/app-page'
import { bringOut } from './setup/samples'

/** Engines may differ in the last bit of sine and exponential. */
const ENGINE_TOLERANCE_DBFS = -120

interface Posted {
  readonly title: string
  readonly vocal: { readonly sampleRate: number; readonly channels: Float32Array<ArrayBuffer>[] }
  readonly backing: { readonly sampleRate: number; readonly channels: Float32Array<ArrayBuffer>[] }
}

declare global {
  interface Window {
    /** What the demo's worker has sung. */
    postedDemo?: Posted
  }
}

test('the worker of the page sings the demo that other tests have recorded, and the page shows its figures', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.Worker = class extends Worker {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options)
        if (String(url).includes('demo.worker'))
          this.addEventListener('message', ({ data }: MessageEvent<Posted>) => {
            window.postedDemo = data
          })
      }
    }
  })
  await page.goto('/')
  await expectFigures(page)
  const recorded = demoTake()
  await expect(page.getByTitle(recorded.title)).toBeVisible()
  for (const name of ['vocal', 'backing'] as const) {
    const { sampleRate, channels } = recorded[name]
    const about = await page.evaluate((of) => {
      const sung = window.postedDemo?.[of]
      return { sampleRate: sung?.sampleRate, channelCount: sung?.channels.length }
    }, name)
    expect(about).toEqual({ sampleRate, channelCount: channels.length })
    for (const [index, expected] of channels.entries()) {
      const samples = await page.evaluateHandle(
        ([of, at]) => window.postedDemo?.[of].channels.slice(at, at + 1) ?? [],
        [name, index] as const,
      )
      expect(differenceDbfs(await bringOut(samples), expected)).toBeLessThan(ENGINE_TOLERANCE_DBFS)
    }
  }
})
