import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import { chainOf, defaultStage, renderChain } from '../src/core'
import { startingChain } from '../src/demo'
import { readWav } from '../src/files/wav/wav-reader'
import { withServedPage } from '../test/setup/served-page'
import { differenceDbfs, RECORDING } from './setup/app-page'

const PORT = 4176
/** The recording is loud so many frames behind its start, and ahead of its end. */
const CUT_FRAMES = 11_000
/** Engines may differ in the last bit of sine and exponential. */
const NODE_TOLERANCE_DBFS = -120

/** Every kind of stage, delays included; what a saturator puts out ahead of an abrupt start is heard behind it. */
const compressor = defaultStage('compressor', 'ahead')
const chain = chainOf([
  defaultStage('saturator', 'first'),
  ...startingChain().stages,
  defaultStage('saturator'),
  {
    ...compressor,
    settings: { ...compressor.settings, lookaheadMs: 5, detector: 'rms', sideChainHighPassHz: 120 },
  },
  defaultStage('gain'),
])

test('worker and audio thread give the same bits, and Node the same to -120 dBFS', async () => {
  const { sound } = readWav(readFileSync(RECORDING), RECORDING)
  const root = fileURLToPath(new URL('./hosts-page', import.meta.url))
  // Cut in the middle of a word, at both ends.
  const samples = (sound.channels[0] ?? new Float32Array()).slice(CUT_FRAMES, -CUT_FRAMES)
  for (const edge of [samples[0], samples.at(-1)]) expect(Math.abs(edge ?? 0)).toBeGreaterThan(0.05)
  const channels = [samples, samples.toReversed()]
  const renders = await withServedPage(root, PORT, async (page) => {
    await page.waitForFunction(() => window.renderInHosts !== undefined)
    return page.evaluate(
      async ([samples, sampleRate, doc]) => window.renderInHosts?.(samples, sampleRate, doc),
      [channels.map((samples) => Array.from(samples)), sound.sampleRate, chain] as const,
    )
  })
  const inNode = renderChain({ sampleRate: sound.sampleRate, channels }, chain).sound
  expect(renders?.offline).toHaveLength(2)
  for (const [c, expected] of inNode.channels.entries()) {
    const offline = Float32Array.from(renders?.offline[c] ?? [])
    expect(offline.some((sample) => Math.abs(sample) > 0.01)).toBe(true)
    expect(Float32Array.from(renders?.worker[c] ?? [])).toEqual(offline)
    expect(Float32Array.from(renders?.page[c] ?? [])).toEqual(offline)
    expect(differenceDbfs(offline, expected)).toBeLessThan(NODE_TOLERANCE_DBFS)
  }
})
