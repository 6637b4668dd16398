import { describe, expect, it } from 'vitest'
import { SPECTROGRAM_ROWS, spectrogram } from '../../../../src/core'
import { frequencyTicks, inkTable } from '../../../../src/view/take/spectrogram/spectrogram-scale'
import { inChannels, steppedSine } from '../../../setup/signals'

describe('the scale of the spectrogram', () => {
  it.each([22_050, 48_000])('has a frequency where its row is drawn, at %i Hz', (sampleRate) => {
    for (const [k, hz] of [100, 1000, 10_000].entries()) {
      const sound = inChannels(sampleRate, steppedSine(sampleRate, [[2, -6]], hz), 1)
      const levels = spectrogram(sound, { fromFrame: sampleRate / 2, hopFrames: sampleRate, count: 1 })
      const row = levels.indexOf(Math.max(...levels))
      const y = frequencyTicks(sampleRate, SPECTROGRAM_ROWS)[k]?.y ?? Number.NaN
      // The lowest rows are narrower than the lobe of a sine: its top may lie on a row beside.
      expect(Math.abs(SPECTROGRAM_ROWS - y - (row + 0.5))).toBeLessThan(hz === 100 ? 2 : 1)
    }
  })

  it('names no frequency above the highest row', () => {
    expect(frequencyTicks(16_000, 100).map(({ label }) => label)).toEqual(['100', '1k'])
  })

  it('gives more ink to what is louder, none to silence, and no take less than a quieter one', () => {
    for (const peakDbfs of [0, -6, -40, null]) {
      const ink = inkTable(peakDbfs)
      expect([ink[0], ink[255]]).toEqual([0, 255])
      expect(ink).toEqual(ink.toSorted())
    }
    expect(inkTable(-30)[150]).toBeGreaterThan(inkTable(0)[150] ?? 0)
  })
})
