import { type StageDoc, type StageKind, stageDefinitions } from '../stages'
import type { BandSettings, EqualiserDesign } from '../stages/equaliser/band'
import { bandMagnitudeDb } from '../stages/equaliser/sections'
import type { ChainDoc } from './chain-doc'

/**
 * Magnitude response in dB at `frequenciesHz` of a whole chain (everything linear in it), of one stage, or of one
 * band. What is switched off, and what depends on level (compressor, de-esser, saturator), counts as 0 dB. Computed
 * from the same coefficients that filter the sound; never below -400 dB for one stage.
 * @param frequenciesHz from 0 to half the sample rate
 * @param sampleRate Hz
 * @param design of a band on its own; chains and stages carry theirs
 */
export function magnitudeDb(
  of: ChainDoc | StageDoc | BandSettings,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
  design: EqualiserDesign = 'matched',
): Float64Array {
  if ('stages' in of) {
    const total = new Float64Array(frequenciesHz.length)
    for (const stage of of.stages) {
      stageMagnitudeDb(stage, frequenciesHz, sampleRate).forEach((db, i) => {
        total[i] = (total[i] ?? 0) + db
      })
    }
    return total
  }
  if ('kind' in of) return stageMagnitudeDb(of, frequenciesHz, sampleRate)
  return bandMagnitudeDb(of, frequenciesHz, sampleRate, design)
}

function stageMagnitudeDb<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
): Float64Array {
  const { magnitudeDb: magnitude } = stageDefinitions[stage.kind]
  if (!stage.on || !magnitude) return new Float64Array(frequenciesHz.length)
  return magnitude(stage.settings, frequenciesHz, sampleRate)
}
