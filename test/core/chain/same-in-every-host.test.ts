import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type ChainDoc,
  ChainProcessor,
  chainOf,
  frameCount,
  MAX_BLOCK_FRAMES,
  renderChain,
  renderDifference,
  type Sound,
  TraceRun,
} from '../../../src/core'
import { SETTING_FADE_MS } from '../../../src/core/dsp/dynamics/time-constant'
import { BANK_FRAMES } from '../../../src/core/dsp/filters/section-bank'
import { abruptSounds } from '../../setup/abrupt-sounds'
import { stageWith } from '../../setup/chains'
import { chains, holds, SEED } from '../../setup/random-chains'

const takes = abruptSounds({ min: 1, max: 3000 })
const cuts = fc.oneof(
  fc.constantFrom(1, 7, 128, MAX_BLOCK_FRAMES),
  fc.integer({ min: 1, max: MAX_BLOCK_FRAMES }),
)

/** A saturator, which sounds ahead of an abrupt start, before what hears that: -69.7 dBFS apart in a cut recording. */
const saturatedFirst = chainOf([
  stageWith('saturator', { driveDb: 12 }),
  stageWith('equaliser', {}),
  stageWith('compressor', { lookaheadMs: 5 }),
  stageWith('de-esser', {}),
])

/** `sound` and silence behind it through a processor as the audio thread runs it; what comes out is aligned with the input. */
function streamed(sound: Sound, chain: ChainDoc, blockFrames: number, differenceId: string | null = null) {
  const { sampleRate, channels } = sound
  const host = { sampleRate, channelCount: channels.length, differenceToo: differenceId !== null }
  const processor = new ChainProcessor(chain, host)
  processor.watch(differenceId)
  const { latencyFrames } = processor
  const total = frameCount(sound) + latencyFrames
  const output = channels.map((samples) => withSilence(samples, 0, total))
  const difference = channels.map(() => new Float32Array(total))
  for (let from = 0; from < total; from += blockFrames) {
    const count = Math.min(blockFrames, total - from)
    const cut = (samples: Float32Array) => samples.subarray(from, from + count)
    processor.process(
      output.map(cut),
      count,
      undefined,
      differenceId === null ? undefined : difference.map(cut),
    )
  }
  const aligned = (samples: Float32Array) => samples.slice(latencyFrames)
  return { channels: output.map(aligned), difference: difference.map(aligned) }
}

function withSilence(samples: Float32Array, before: number, frames: number): Float32Array {
  const padded = new Float32Array(frames)
  padded.set(samples, before)
  return padded
}

describe(`a take that begins and ends abruptly (seed ${SEED})`, () => {
  it('comes out of a render and of the audio thread with the same bits', () => {
    holds(fc.tuple(takes, chains(), cuts), 200, ([take, chain, blockFrames]) => {
      expect(streamed(take, chain, blockFrames).channels).toEqual(renderChain(take, chain).sound.channels)
    })
  })

  it('does so behind a saturator with every kind of stage behind that', () => {
    holds(fc.tuple(takes, cuts), 30, ([take, blockFrames]) => {
      const rendered = renderChain(take, saturatedFirst).sound.channels
      expect(streamed(take, saturatedFirst, blockFrames).channels).toEqual(rendered)
    })
  })

  it('sounds the same, to the bit, with silence in front of it', () => {
    // Whole periods of the flushing of what has died away: within one, states below 1e-20 may differ.
    const silence = fc.integer({ min: 1, max: 20 }).map((periods) => periods * BANK_FRAMES)
    holds(fc.tuple(takes, chains(), silence), 80, ([take, chain, before]) => {
      const late = {
        ...take,
        channels: take.channels.map((samples) => withSilence(samples, before, before + samples.length)),
      }
      const expected = renderChain(take, chain).sound.channels
      const found = renderChain(late, chain).sound.channels.map((samples) => samples.slice(before))
      expect(found).toEqual(expected)
    })
  })

  it('has the same traces where only gains are worked out', () => {
    holds(fc.tuple(takes, chains()), 80, ([take, chain]) => {
      const run = new TraceRun(take, chain.stages, { from: 0, to: frameCount(take) })
      for (const _ of run.goOn(frameCount(take)));
      const { traces } = renderChain(take, chain)
      for (const { stageId, gainDb } of run.traces()) expect(gainDb).toEqual(traces.get(stageId)?.gainDb)
    })
  })

  it('loses to each stage the same bits in a render and on the audio thread', () => {
    const chainsWithStage = chains(undefined, { minLength: 1, maxLength: 4 })
    const place = fc.nat(3)
    holds(fc.tuple(takes, chainsWithStage, place, cuts), 80, ([take, chain, index, blockFrames]) => {
      const stageId = chain.stages[index % chain.stages.length]?.id ?? ''
      const { difference } = streamed(take, chain, blockFrames, stageId)
      const rendered = renderDifference(take, chain, stageId).channels
      // The processor goes over to what is watched in a fade.
      const faded = Math.ceil((SETTING_FADE_MS * take.sampleRate) / 1000)
      // Nothing can be +0 or -0, which sound alike.
      const compared = (samples: Float32Array) => samples.slice(faded).map((x) => x + 0)
      expect(difference.map(compared)).toEqual(rendered.map(compared))
    })
  })
})
