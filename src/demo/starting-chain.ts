import { type BandSettings, type ChainDoc, chainOf, defaultStage, type StageDoc } from '../core'

/**
 * What the settings answer, as figures: the page starts with this chain, and is not to fetch the song and the faults for
 * it. A test holds them to the song (`song/score.ts`) and to the faults (`faults/fault-sizes.ts`).
 */
export const startingFacts = {
  /** The lowest note of the song, A3, held at the end of the first phrase, Hz. */
  lowestHz: 220,
  box: { frequencyHz: 310, gainDb: 6, q: 1.8 },
  top: { frequencyHz: 8000, gainDb: -6 },
  /** Where the rise of the bass by the microphone's place is 3 dB, Hz. */
  proximityCornerHz: 390,
} as const

const { lowestHz, box, top, proximityCornerHz } = startingFacts

/**
 * The chain the demo starts with. Each setting answers one of the take's own faults (`fault-sizes.ts`) or something in
 * the song; where a figure had to be found by measuring the take, it says what was measured.
 */
export function startingChain(): ChainDoc {
  return chainOf([
    equaliser('clean-up', [
      // 0.85 times the lowest fundamental: common practice, no source. Steep, since rumble and bursts of breath lie
      // two octaves and less below it: 24 dB per octave take 42 dB from a burst at 55 Hz, 12 only 21.
      { shape: 'high-pass', frequencyHz: Math.round(0.85 * lowestHz), slopeDbPerOctave: 24 },
      // The resonance upside down.
      { shape: 'bell', frequencyHz: box.frequencyHz, gainDb: -box.gainDb, q: box.q },
    ]),
    // What the microphone's place and the room did to the balance. In front of the compressor, which hears the S that
    // the lift brings up and holds them 0.5 dB lower than it would with the lift behind it (measured).
    equaliser('lift', [
      // What the top lost.
      { shape: 'high-shelf', frequencyHz: top.frequencyHz, gainDb: -top.gainDb, q: Math.SQRT1_2 },
      // The rise of the bass upside down: a first-order high-pass.
      {
        shape: 'high-pass',
        frequencyHz: proximityCornerHz,
        slopeDbPerOctave: 6,
      },
    ]),
    changed(defaultStage('compressor', 'level'), {
      // The softest phrase is touched by 1 dB, the loudest, 10 dB above it, by 7 to 10 (measured); a ratio of 3 leaves
      // a third of what lies between them.
      thresholdDb: -23,
      ratio: 3,
      kneeDb: 6,
      // One period of the lowest note: a faster one would bend single waves.
      attackMs: Math.round(1000 / lowestHz),
      // One wave of the vibrato: a faster one would follow it and flatten it.
      releaseMs: 170,
      // As loud as the take (measured).
      makeupDb: 8,
    }),
    changed(defaultStage('de-esser', 'sibilance'), {
      // Above the third formant of every vowel (3310 Hz, and 3 % of drift), so that bright vowels do not set it off.
      crossoverHz: 4000,
      // These S reach down to 2.5 kHz, past the crossover: turning down only what lies above it makes them 5 dB softer
      // and not 8 (measured).
      band: 'all',
      // Where an S falls to what it was in the clean voice, 10 to 11 dB below the vowel, and vowels go untouched.
      thresholdDb: -29,
      // Reduction goes by how hard each S is, from 7 to 15 dB (measured); the range is never reached.
      ratio: 6,
      rangeDb: 18,
      // S take 15 to 40 ms to rise and to fall: quick enough to be there, slow enough not to follow the hiss.
      attackMs: 1,
      releaseMs: 15,
    }),
  ])
}

function equaliser(id: string, bands: readonly Partial<BandSettings>[]): StageDoc<'equaliser'> {
  const stage = defaultStage('equaliser', id)
  const [neutral] = stage.settings.bands
  if (!neutral) throw new RangeError('an equaliser starts with a band')
  return changed(stage, { bands: bands.map((band) => ({ ...neutral, ...band })) })
}

function changed<Stage extends { readonly settings: object }>(
  stage: Stage,
  settings: Partial<Stage['settings']>,
): Stage {
  return { ...stage, settings: { ...stage.settings, ...settings } }
}
