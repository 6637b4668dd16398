import type { BandSettings, ChainDoc, StageDoc } from '../core'

/**
 * `now`, with the stages and bands that are alike in `before` taken from there: what hangs on one of them is worked
 * out and drawn anew only when that one changes, and not with every edit of another.
 */
export function withSameParts(now: ChainDoc, before: ChainDoc): ChainDoc {
  const earlier = new Map(before.stages.map((stage) => [stage.id, stage]))
  return { ...now, stages: now.stages.map((stage) => sameStageParts(stage, earlier.get(stage.id))) }
}

function sameStageParts(stage: StageDoc, before: StageDoc | undefined): StageDoc {
  if (before && isAlike(stage, before)) return before
  if (stage.kind !== 'equaliser' || before?.kind !== 'equaliser') return stage
  const bands = stage.settings.bands.map((band: BandSettings, index) => {
    const known = before.settings.bands[index]
    return known && isAlike(band, known) ? known : band
  })
  return { ...stage, settings: { ...stage.settings, bands } }
}

/** Whether two values of plain objects and arrays are the same in all. */
export function isAlike(a: object | undefined, b: object | undefined): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}
