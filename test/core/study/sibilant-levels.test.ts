import { expect, it } from 'vitest'
import { detectorLevelSteps, finished, sibilantLevels } from '../../../src/core'
import { monoOf, stageWith } from '../../setup/chains'

const RATE = 48_000
/** Levels of sines, read at their peaks, and through a crossover far from them. */
const TOLERANCE_DB = 0.1

const tone = (n: number, hz: number, peak: number) => peak * Math.sin((2 * Math.PI * hz * n) / RATE)

/** A vowel of 250 Hz with a faint tone at 9 kHz in it, an "s" at 10 kHz from 0.5 s to 0.6 s, and a click of a T later. */
function sampleAt(n: number): number {
  const seconds = n / RATE
  if (seconds >= 0.5 && seconds < 0.6) return tone(n, 10_000, 0.1)
  if (seconds >= 0.72 && seconds < 0.74) return tone(n, 10_000, 0.05)
  return seconds < 0.7 ? tone(n, 250, 0.5) + tone(n, 9000, 0.002) : 0
}

it('sibilants have the level of their highest moment, and beside it that of the vowel, not of the T', () => {
  const sound = monoOf(RATE, RATE, sampleAt)
  const level = finished(detectorLevelSteps(sound, stageWith('de-esser', { crossoverHz: 3000 })))
  if (!level) throw new Error('a de-esser has a detector')
  const events = [{ startSeconds: 0.5, endSeconds: 0.6, levelDb: null }]
  const [found] = sibilantLevels(sound, level, events)
  expect(Math.abs((found?.levelDbfs ?? 0) + 20)).toBeLessThan(TOLERANCE_DB)
  // 0.002 of full scale is -54 dBFS; the vowel itself, 3.6 octaves below the crossover, adds 0.5 less 86 dB.
  expect(Math.abs((found?.vowelDbfs ?? 0) + 54)).toBeLessThan(0.3)
})

it('a sibilant on its own has no vowel beside it', () => {
  const sound = monoOf(RATE, RATE, (n) => (n > 0.4 * RATE && n < 0.6 * RATE ? tone(n, 9000, 0.1) : 0))
  const level = finished(detectorLevelSteps(sound, stageWith('de-esser', {})))
  if (!level) throw new Error('a de-esser has a detector')
  const all = [{ startSeconds: 0.1, endSeconds: 0.9, levelDb: null }]
  expect(sibilantLevels(sound, level, all)[0]?.vowelDbfs).toBeNull()
  expect(sibilantLevels(sound, level, [])).toEqual([])
})
