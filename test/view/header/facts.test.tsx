import { describe, expect, it } from 'vitest'
import type { Measures } from '../../../src/core'
import { measureFacts, takeFacts } from '../../../src/view/header/facts'
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
const facts = new Map(measureFacts(measures).map((fact) => [fact.label, fact]))

describe('facts of a take', () => {
  it('say length, rate and channels, and what the file says of itself', () => {
    expect(takeFacts(take)).toEqual(['0:10.0', '8 kHz', 'mono'])
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
    expect(takeFacts({ ...take, header, sound: { sampleRate: 44_100, channels } })).toEqual([
      '0:10.0',
      '44.1 kHz',
      'stereo',
      '24-bit FLAC',
    ])
  })

  it('print levels with their units and a true minus', () => {
    expect(facts.get('Loudness')?.value).toBe('−19.8 LUFS')
    expect(facts.get('Peak')?.value).toBe('0.3 dBTP')
  })

  it('say so when something could not be measured', () => {
    expect(facts.get('Noise floor')?.value).toBe('not measurable')
  })

  it('mark clipping and an offset on either side', () => {
    expect(facts.get('Clipped samples')).toMatchObject({ value: '12', worth: true })
    expect(facts.get('DC')).toMatchObject({ value: '0.40 %', worth: true })
    const clean = measureFacts({ ...measures, clippedSamples: 0, dcOffset: [0] })
    expect(clean.some(({ worth }) => worth)).toBe(false)
  })

  it('call a floor that no recording has digital silence', () => {
    const silent = measureFacts({ ...measures, noiseFloorDbfs: -172 })
    expect(silent.find(({ label }) => label === 'Noise floor')?.value).toBe('digital silence')
  })
})
