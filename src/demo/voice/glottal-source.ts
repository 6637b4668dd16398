import { dbToGain } from '../../core'
import { seededRandom, whiteNoise } from '../../core/primitives'
import { hopFrames, sampleRate } from '../song/track'
import { type PulseTables, pulseTables, tableLength } from './pulse-table'

/** What drives the glottis, one value for each control hop. */
export interface GlottalControls {
  readonly pitchHz: Float64Array
  readonly voiceGain: Float64Array
  readonly breathGain: Float64Array
  /** 0 soft to 1 full. */
  readonly effort: Float64Array
}

// Shares of the cycle. A breathy voice is open for 70 to 80 % of it, a firm one for 50 to 60 % (D. H. Klatt,
// L. C. Klatt, JASA 87(2), 1990).
const soft = { rise: 0.5, fall: 0.24, cornerHz: 1400 } as const
const full = { rise: 0.38, fall: 0.16, cornerHz: 4500 } as const
/** Above this the noise of breath without voice falls off. */
const breathCornerHz = 3000
/** Through an opening that shuts in every cycle, breath hisses above this only, at these levels against the tone. */
const aspiration = { cornerHz: 2000, softDb: -20, fullDb: -14 } as const
/** From cycle to cycle, as a share; common practice, no source. */
const jitter = 0.004
const shimmer = 0.03

/**
 * The sound just above the vocal folds, with the radiation of the lips already in it: a pulse train whose
 * pulse changes from soft to full with the effort, the noise of the breath that goes with it, halved for half of each
 * cycle (Klatt 1980), and breath without voice. Cycles vary a little in length and strength.
 */
export function glottalSource(controls: GlottalControls, frames: number, seed: number): Float64Array {
  const softTables = pulseTables(soft.rise, soft.fall)
  const fullTables = pulseTables(full.rise, full.fall)
  const noise = whiteNoise(frames, seed)
  const random = seededRandom(seed)
  const source = new Float64Array(frames)
  let phase = 0
  let cycleRate = 1
  let cycleGain = 1
  const breathFollow = onePole(breathCornerHz)
  const aspirationFollow = onePole(aspiration.cornerHz)
  let tilted = 0
  let breathed = 0
  let below = 0
  const spread = () => (random() + random() + random() - 1.5) * 2

  for (let hop = 0; hop * hopFrames < frames; hop += 1) {
    const pitchHz = controls.pitchHz[hop] ?? 0
    const effort = controls.effort[hop] ?? 0
    const voice = ramp(controls.voiceGain, hop)
    const breath = ramp(controls.breathGain, hop)
    const softSamples = tableFor(softTables, pitchHz)
    const fullSamples = tableFor(fullTables, pitchHz)
    const cornerHz = soft.cornerHz * (full.cornerHz / soft.cornerHz) ** effort
    const follow = onePole(cornerHz)
    const aspirationGain = dbToGain(lerp(aspiration.softDb, aspiration.fullDb, effort))
    const end = Math.min(frames, (hop + 1) * hopFrames)
    for (let i = hop * hopFrames; i < end; i += 1) {
      const step = i - hop * hopFrames
      const index = Math.floor(phase * tableLength)
      const share = phase * tableLength - index
      const next = (index + 1) % tableLength
      const softPulse = lerp(softSamples[index] ?? 0, softSamples[next] ?? 0, share)
      const fullPulse = lerp(fullSamples[index] ?? 0, fullSamples[next] ?? 0, share)
      tilted += follow * (lerp(softPulse, fullPulse, effort) * cycleGain - tilted)
      const white = noise[i] ?? 0
      breathed += breathFollow * (white - breathed)
      below += aspirationFollow * (white - below)
      const pulsed = aspirationGain * (phase < 0.5 ? 0.5 : 1) * (white - below)
      source[i] =
        (tilted + pulsed) * (voice.from + voice.slope * step) + breathed * (breath.from + breath.slope * step)
      phase += (pitchHz * cycleRate) / sampleRate
      if (phase >= 1) {
        phase -= 1
        cycleRate = 1 + jitter * spread()
        cycleGain = 1 + shimmer * spread()
      }
    }
  }
  return source
}

/** Share of the way to its input that a one-pole low-pass goes in one frame. */
function onePole(cornerHz: number): number {
  return 1 - Math.exp((-2 * Math.PI * cornerHz) / sampleRate)
}

function lerp(from: number, to: number, share: number): number {
  return from + (to - from) * share
}

function ramp(track: Float64Array, hop: number): { from: number; slope: number } {
  const from = track[hop] ?? 0
  return { from, slope: ((track[hop + 1] ?? from) - from) / hopFrames }
}

function tableFor(tables: PulseTables, pitchHz: number): Float64Array {
  const fitting = tables.find(({ harmonics }) => harmonics * pitchHz < 0.45 * sampleRate) ?? tables.at(-1)
  return fitting?.samples ?? new Float64Array(tableLength)
}
