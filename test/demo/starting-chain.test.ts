import { describe, expect, it } from 'vitest'
import {
  chainOf,
  measure,
  type Rendering,
  reductionSummary,
  renderChain,
  sibilantEvents,
  type Trace,
} from '../../src/core'
import { demoTake, type PhonemeKind, startingChain } from '../../src/demo'
import { faultSizes } from '../../src/demo/faults/fault-sizes'
import { proximityCornerHz } from '../../src/demo/faults/proximity'
import { noteFrequencyHz } from '../../src/demo/song/note'
import { song } from '../../src/demo/song/score'
import { startingFacts } from '../../src/demo/starting-chain'

const { vocal, labels } = demoTake()
const chain = startingChain()
const rendered = renderChain(vocal, chain)
const sibilants = sibilantEvents(vocal)
const before = measure(vocal, { sibilants })
const after = measure(rendered.sound, { sibilants })

function traceOf({ traces }: Rendering, kind: 'compressor' | 'de-esser'): Trace {
  const trace = traces.get(chain.stages.find((stage) => stage.kind === kind)?.id ?? '')
  if (!trace) throw new RangeError(`no trace of the ${kind}`)
  return trace
}

/** Gain reductions, dB, of a trace between two times. */
function reductions({ gainDb, hopFrames }: Trace, fromSeconds: number, toSeconds: number): number[] {
  const hop = (seconds: number) => Math.floor((seconds * vocal.sampleRate) / hopFrames)
  return [...gainDb.subarray(hop(fromSeconds), hop(toSeconds) + 1)].map((gain) => -gain)
}

const labelled = (kind: PhonemeKind) => labels.phonemes.filter((label) => label.kind === kind)

// All bounds here are our own: what this take, whose faults are known, should come out as.
describe('startingChain', () => {
  it('stands on the song and the faults as they are', () => {
    const notes = song.phrases.flatMap(({ syllables }) => syllables.map(({ note }) => noteFrequencyHz(note)))
    expect(startingFacts).toEqual({
      lowestHz: Math.min(...notes),
      box: faultSizes.box,
      top: faultSizes.top,
      proximityCornerHz: Math.round(proximityCornerHz(faultSizes.proximityMetres)),
    })
  })

  it('brings sibilance down by at least 2 dB against the vowels', () => {
    expect(before.sibilanceDb ?? 0).toBeGreaterThan(-9)
    expect((after.sibilanceDb ?? 0) - (before.sibilanceDb ?? 0)).toBeLessThan(-2)
  })

  it('reduces hard S by several dB more than weak ones, and none by all of its range', () => {
    const trace = traceOf(rendered, 'de-esser')
    const deepest = labelled('sibilant').map(({ startSeconds, endSeconds }) =>
      Math.max(...reductions(trace, startSeconds, endSeconds)),
    )
    const deEsser = chain.stages.find(({ kind }) => kind === 'de-esser')
    if (deEsser?.kind !== 'de-esser') throw new RangeError('no de-esser')
    expect(Math.min(...deepest)).toBeGreaterThan(3)
    expect(Math.max(...deepest) - Math.min(...deepest)).toBeGreaterThan(5)
    expect(Math.max(...deepest)).toBeLessThan(deEsser.settings.rangeDb - 1)
  })

  it('leaves the vowels alone while it reduces the S: more than 1 dB for at most 6 % of their time', () => {
    const trace = traceOf(rendered, 'de-esser')
    // From 60 ms after their start, when an S before them has ended.
    const inVowels = labelled('vowel').flatMap(({ startSeconds, endSeconds }) =>
      endSeconds - startSeconds > 0.06 ? reductions(trace, startSeconds + 0.06, endSeconds) : [],
    )
    expect(inVowels.length).toBeGreaterThan(2000)
    expect(inVowels.filter((db) => db > 1).length / inVowels.length).toBeLessThanOrEqual(0.06)
  })

  it('compresses the loud phrase by 7 to 10 dB and hardly touches the soft one', () => {
    const trace = traceOf(rendered, 'compressor')
    const deepest = labels.phrases.map(({ startSeconds, endSeconds }) =>
      Math.max(...reductions(trace, startSeconds, endSeconds)),
    )
    const [, , loud = 0, soft = 0] = deepest
    expect(reductionSummary(trace).maxDb).toBe(loud)
    expect(loud).toBeGreaterThan(7)
    expect(loud).toBeLessThan(10)
    expect(soft).toBeLessThan(2)
  })

  it('is as loud as the take to 1 LU, more even, and peaks no higher than -1 dBTP', () => {
    expect(Math.abs((after.integratedLufs ?? 0) - (before.integratedLufs ?? 99))).toBeLessThan(1)
    expect(after.loudnessRangeLu ?? 99).toBeLessThan((before.loudnessRangeLu ?? 0) - 2)
    expect(after.truePeakDbtp ?? 0).toBeLessThanOrEqual(-1)
  })

  it('takes rumble and bursts of breath out of the bottom', () => {
    const equalised = renderChain(vocal, chainOf(chain.stages.slice(0, 1))).sound
    const floorDbfs = measure(equalised).noiseFloorDbfs ?? 0
    expect(floorDbfs).toBeLessThan((before.noiseFloorDbfs ?? 0) - 10)
  })
})
