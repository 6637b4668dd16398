import { type BandSettings, type ChainDoc, chainOf, defaultStage, type StageDoc } from '../core'

/**
 * The chain the demo starts with: clear the bottom, take out the box, lift presence and top in front of the
 * compressor, hold the level, and hold the S last. Settings are common practice, no source, fitted to the demo.
 */
export function startingChain(): ChainDoc {
  return chainOf([
    equaliser('clean-up', [
      { shape: 'high-pass', frequencyHz: 170, q: Math.SQRT1_2 },
      { shape: 'bell', frequencyHz: 300, gainDb: -3, q: 1.2 },
    ]),
    equaliser('lift', [
      { shape: 'bell', frequencyHz: 3000, gainDb: 4, q: 1 },
      { shape: 'high-shelf', frequencyHz: 8000, gainDb: 4, q: Math.SQRT1_2 },
    ]),
    changed(defaultStage('compressor', 'level'), {
      thresholdDb: -19,
      ratio: 4,
      kneeDb: 6,
      attackMs: 0.5,
      releaseMs: 50,
      makeupDb: 5,
    }),
    changed(defaultStage('de-esser', 'sibilance'), {
      crossoverHz: 4500,
      thresholdDb: -30,
      ratio: 20,
      rangeDb: 10,
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
