import type { Segment } from '../song/layout'
import { burstStart } from '../voice/stops'
import type { FaultLabel, PhraseLabel } from './labels'
import { proximityRiseDb } from './proximity'

/** What is wrong with the take, and by how much. All figures are our own choice of a plausible home recording. */
export const faultSizes = {
  /** RMS of the vowels of each phrase against the loudest. */
  phraseLevelsDb: [-4, -6, 0, -10],
  /** S against vowels in the take less the same in the clean voice: what other faults do to both is made up for. */
  sharpSibilanceDb: 6,
  /** Peak against the RMS of the vowels of the phrase. */
  plosiveBurst: { frequencyHz: 55, decaySeconds: 0.03, peakDb: 6 },
  proximityMetres: 0.07,
  room: { decaySeconds: 0.4, levelDb: -16 },
  box: { frequencyHz: 310, gainDb: 6, q: 1.8 },
  top: { frequencyHz: 8000, gainDb: -6 },
  voicePeakDbfs: -4,
  rumble: { fromHz: 18, toHz: 45, levelDbfs: -46 },
  noise: { fromHz: 100, toHz: 1500, topDb: -12, levelDbfs: -64 },
} as const

/** The faults as labels; what lasts from end to end has no times. */
export function faultLabels(segments: readonly Segment[], phrases: readonly PhraseLabel[]): FaultLabel[] {
  const { rumble, box, top, noise, room, plosiveBurst } = faultSizes
  const riseDb = proximityRiseDb(faultSizes.proximityMetres, 200).toFixed(1)
  return [
    {
      kind: 'rumble',
      what: `Rumble from ${rumble.fromHz} to ${rumble.toHz} Hz`,
      amount: rumble.levelDbfs,
      unit: 'dBFS',
      frequencyHz: rumble.toHz,
    },
    {
      kind: 'proximity',
      what: `Bass rise of a cardioid microphone sung into from close by: ${riseDb} dB at 200 Hz`,
      amount: Math.round(faultSizes.proximityMetres * 100),
      unit: 'cm',
      frequencyHz: 200,
    },
    {
      kind: 'box-resonance',
      what: 'Resonance of a small room',
      amount: box.gainDb,
      unit: 'dB',
      frequencyHz: box.frequencyHz,
    },
    {
      kind: 'sharp-sibilance',
      what: 'Every s, z and sh stronger against the vowels than in the clean voice',
      amount: faultSizes.sharpSibilanceDb,
      unit: 'dB',
      frequencyHz: 6800,
    },
    {
      kind: 'dull-top',
      what: 'Top taken off',
      amount: top.gainDb,
      unit: 'dB',
      frequencyHz: top.frequencyHz,
    },
    {
      kind: 'room-noise',
      what: `Steady noise of the room above ${noise.fromHz} Hz, beneath the rumble`,
      amount: noise.levelDbfs,
      unit: 'dBFS',
    },
    {
      kind: 'reverberation',
      what: `Reverberation of the room against the voice, falling by 60 dB in ${room.decaySeconds} s`,
      amount: room.levelDb,
      unit: 'dB',
    },
    ...phrases.map(
      ({ startSeconds, endSeconds }, index): FaultLabel => ({
        kind: 'uneven-level',
        what: `Level of phrase ${index + 1} against the loudest`,
        amount: faultSizes.phraseLevelsDb[index] ?? 0,
        unit: 'dB',
        startSeconds,
        endSeconds,
      }),
    ),
    ...segments
      .filter(({ symbol }) => symbol === 'p')
      .map(({ startSeconds, endSeconds }): FaultLabel => {
        const start = burstStart(startSeconds, endSeconds)
        return {
          kind: 'plosive-burst',
          what: 'Burst of breath on the microphone, peak against the RMS of the vowels',
          amount: plosiveBurst.peakDb,
          unit: 'dB',
          frequencyHz: plosiveBurst.frequencyHz,
          startSeconds: start,
          endSeconds: start + 4 * plosiveBurst.decaySeconds,
        }
      }),
  ]
}
