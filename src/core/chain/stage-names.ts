import { type StageKind, stageDefinitions } from '../stages'

/** A stage by its position in the chain, from 0, and its kind: "2 Equaliser". */
export function numberedStage(index: number, kind: StageKind): string {
  return `${index + 1} ${stageDefinitions[kind].label}`
}

/** A band by the position of its stage in the chain and its own, both from 0, as on the curve: "2a". */
export function numberedBand(stageIndex: number, bandIndex: number): string {
  return `${stageIndex + 1}${bandLetter(bandIndex)}`
}

/** Bands have letters: a, b, c. */
export function bandLetter(bandIndex: number): string {
  return String.fromCharCode('a'.charCodeAt(0) + bandIndex)
}
