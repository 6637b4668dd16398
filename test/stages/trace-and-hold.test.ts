import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameCount, stageDefinitions, stageKinds } from '../../src/core'
import { createProcessor } from '../../src/core/stages/create-processor'
import { holds, SEED, sounds, stages } from '../setup/random-chains'

/** Between the two the gains are 32-bit floats: -120 dB re the loudest sample. */
const ROUNDING = 1e-6

describe(`gains found first and applied later (seed ${SEED})`, () => {
  for (const kind of stageKinds.filter((one) => stageDefinitions[one].reducesGain))
    it(`give the sound of a ${kind} that does both at once`, () => {
      let reduced = 0
      holds(fc.tuple(sounds({ min: 200, max: 3000 }), stages([kind])), 100, ([sound, stage]) => {
        const [frames, channelCount] = [frameCount(sound), sound.channels.length]
        const host = { sampleRate: sound.sampleRate, channelCount, settingsStay: true }
        const [copy, other] = [0, 1].map(() => sound.channels.map((samples) => samples.slice()))
        const [gainDb, found] = [new Float32Array(frames), new Float32Array(frames)]
        createProcessor(stage, host).process(copy ?? [], frames, gainDb)
        createProcessor(stage, host).trace?.(sound.channels, frames, found)
        createProcessor(stage, host).hold?.(other ?? [], frames, found)
        expect(found).toEqual(gainDb)
        for (const [c, samples] of (copy ?? []).entries()) {
          const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 1)
          for (const [n, sample] of samples.entries())
            expect(Math.abs(sample - (other?.[c]?.[n] ?? Number.NaN))).toBeLessThan(ROUNDING * loudest)
        }
        if (gainDb.some((gain) => gain < -1)) reduced++
      })
      expect(reduced).toBeGreaterThan(10)
    })
})
