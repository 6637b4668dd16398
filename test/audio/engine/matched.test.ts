import { ebur128_integrated_mono } from 'ebur128-wasm'
import { describe, expect, it } from 'vitest'
import { matchingGains } from '../../../src/compute/select/matching'
import {
  bypassed,
  chainLatencyFrames,
  dbToGain,
  excerpt,
  MAX_LOOKAHEAD_MS,
  renderChain,
  type Sound,
  stageDefinitions,
} from '../../../src/core'
import { heard, listenTo, warmEngine } from '../../setup/engine'
import { moderateChains } from '../../setup/moderate-chains'
import { SEED } from '../../setup/random-chains'
import { recordings } from '../../setup/recordings'
import { sideLoudness } from '../../setup/side-loudness'
import { joined } from '../../setup/signals'
import { sungDemo } from '../../setup/sung-demo'

const BLOCK_FRAMES = 2048
/** So low that the guard has nothing to do; taken off again before measuring, for the gates to be where they were. */
const MONITOR_DB = -18

const spoken = recordings().filter(({ name }) => name !== 'Noise.wav')
const chains = moderateChains(20, SEED).map((chain, index) => ({
  chain,
  name: `${index + 1}: ${chain.stages.map(({ kind, on }) => `${stageDefinitions[kind].label}${on ? '' : ' off'}`).join(', ')}`,
}))

const demo = sungDemo().vocal

/** From the second phrase on: a stretch with loud and soft words, sibilants and a pause. */
const STRETCH_SECONDS = { from: 4, to: 12 }

/** One chain hears all of the demo; the others, a stretch of it: what they could do wrong, they would do there. */
const takes: { readonly name: string; readonly sound: Sound; readonly heardBy: typeof chains }[] = [
  { name: 'the whole demo', sound: demo, heardBy: chains.slice(0, 1) },
  {
    name: `seconds ${STRETCH_SECONDS.from} to ${STRETCH_SECONDS.to} of the demo`,
    sound: excerpt(demo, STRETCH_SECONDS.from * demo.sampleRate, STRETCH_SECONDS.to * demo.sampleRate),
    heardBy: chains,
  },
  {
    name: `${spoken.length} recordings in a row`,
    heardBy: chains,
    sound: {
      sampleRate: 48_000,
      channels: [joined(spoken.map(({ sound }) => sound.channels[0] ?? new Float32Array()))],
    },
  },
]

describe.each(takes)(`both sides at the output, matched, on $name (seed ${SEED})`, ({ sound, heardBy }) => {
  const { sampleRate, channels } = sound
  const frames = channels[0]?.length ?? 0

  it.each(heardBy)(
    'chain $name: within 0.1 LU of each other by ebur128-wasm (0.02 when written)',
    ({ chain }) => {
      const delay = chainLatencyFrames(chain, sampleRate, MAX_LOOKAHEAD_MS)
      const before = renderChain(sound, bypassed(chain)).sound
      const after = renderChain(sound, chain).sound
      const { bypassedDb, processedDb } = matchingGains(
        sideLoudness(before),
        sideLoudness(after),
        null,
        sampleRate,
      )
      const [bypassedLufs = Number.NaN, processedLufs = Number.NaN] = (
        ['bypassed', 'processed'] as const
      ).map((side) => {
        const gains = { bypassedGainDb: bypassedDb, processedGainDb: processedDb, monitorDb: MONITOR_DB }
        const engine = warmEngine(channels, listenTo(chain, { heard: side, ...gains }), sampleRate)
        engine.play(0)
        // From the take's first frame on, so that a meter's blocks fall where they fell when matching was measured.
        const output = heard(engine, frames + delay, undefined, BLOCK_FRAMES).subarray(delay)
        return ebur128_integrated_mono(
          sampleRate,
          output.map((x) => x * dbToGain(-MONITOR_DB)),
        )
      })
      expect(bypassedLufs).toBeGreaterThan(-60)
      expect(Math.abs(processedLufs - bypassedLufs)).toBeLessThan(0.1)
    },
  )
})
