import type { StageDoc } from '../stages'
import { bandsOf, withBands } from '../stages/stage-items'
import type { ChainDoc } from './chain-doc'

/**
 * `now`, with the stages and bands that equal those in `before` taken from there: what depends on one of them is
 * computed and drawn again only when that one changes, and not with every edit of another.
 */
export function withSameParts(now: ChainDoc, before: ChainDoc): ChainDoc {
  if (now === before) return before
  const earlier = new Map(before.stages.map((stage) => [stage.id, stage]))
  return { ...now, stages: now.stages.map((stage) => sameStageParts(stage, earlier.get(stage.id))) }
}

function sameStageParts(stage: StageDoc, before: StageDoc | undefined): StageDoc {
  if (!before) return stage
  if (isAlike(stage, before)) return before
  const [bands, earlier] = [bandsOf(stage), bandsOf(before)]
  if (!bands || !earlier) return stage
  const same = bands.map((band, index) => {
    const known = earlier[index]
    return known && isAlike(band, known) ? known : band
  })
  return withBands(stage, same)
}

/** Whether two values of plain objects and arrays are equal. */
export function isAlike(a: object | undefined, b: object | undefined): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}
