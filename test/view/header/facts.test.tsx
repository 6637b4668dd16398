import { describe, expect, it } from 'vitest'
import type { Measures } from '../../../src/core'
import { measureFacts, outputFact, takeFacts } from '../../../src/view/header/facts'
import { take } from '../keys/on-page'

const measures: Measures = {
  integratedLufs: -19.84,
  momentaryMaxLufs: null,
  shortTermMaxLufs: null,
  loudnessRangeLu: null,
  truePeakDbtp: 0.31,
  samplePeakDbfs: -0.1,
  rmsDbfs: -20,
  crestFactorDb: 19.9,
  peakToLoudnessLu: 20,
  noiseFloorDbfs: null,
  sibilanceDb: null,
  clippedSamples: 12,
  dcOffset: [0.0002, -0.004],
  durationSeconds: 10,
}
const words = measureFacts(measures).map((fact) => fact.words)

describe('facts of a take', () => {
  it('say length, rate and channels, and what the file says of itself', () => {
    expect(takeFacts(take).map((fact) => fact.words)).toEqual(['0:10.0', '8 kHz', 'mono'])
    const header = {
      container: 'FLAC',
      codec: 'FLAC',
      sampleRate: 44_100,
      channels: 2,
      bitsPerSample: 24,
      frames: 441_000,
      durationSeconds: 10,
    } as const
    const channels = [new Float32Array(441_000), new Float32Array(441_000)]
    const facts = takeFacts({ ...take, header, sound: { sampleRate: 44_100, channels } })
    expect(facts.map((fact) => fact.words)).toEqual(['0:10.0', '44.1 kHz', 'stereo', '24-bit FLAC'])
  })

  it('print levels with their units and a true minus, and say what was not measurable', () => {
    expect(words.slice(0, 3)).toEqual(['peak 0.3 dBTP', '−19.8 LUFS', 'floor not measurable'])
  })

  it('mark clipping and an offset on either side, and are silent about an offset of nothing', () => {
    const marked = measureFacts(measures).filter(({ worth }) => worth)
    expect(marked.map((fact) => fact.words)).toEqual(['clipped 12', 'DC 0.40 %'])
    const clean = measureFacts({ ...measures, clippedSamples: 0, dcOffset: [0] })
    expect(clean.some(({ worth }) => worth)).toBe(false)
    expect(clean.map((fact) => fact.words)).not.toContain('DC 0.00 %')
  })

  it('call a floor that no recording has digital silence', () => {
    const silent = measureFacts({ ...measures, noiseFloorDbfs: -172 })
    expect(silent.map((fact) => fact.words)).toContain('floor digital silence')
  })
})

describe('the output of the chain', () => {
  it('is told of as loudly as clipped input where its true peak is above full scale, and only there', () => {
    expect(outputFact(1.23)).toMatchObject({ words: 'output +1.2 dBTP', worth: true })
    for (const peak of [0, -0.1, null]) expect(outputFact(peak)).toBeNull()
  })
})
