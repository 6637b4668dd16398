import {
  type ChainDoc,
  excerpt,
  frameCount,
  integratedLoudness,
  longTermSpectrum,
  loudnessOverTime,
  measure,
  peakPyramid,
  type Rendering,
  reductionSummary,
  renderSteps,
  type Sound,
} from '../../core'
import type { Evidence, SideEvidence, StageEvidence } from './evidence'
import { type FrameRange, matchingGains } from './matching'

/** One side as it was last worked out. */
interface KnownSide {
  readonly chain: ChainDoc
  readonly rendering: Rendering
  readonly evidence: SideEvidence
}

/** Kept from one piece of evidence to the next, so that a change costs what it changes. */
export interface EvidenceCache {
  readonly without: KnownSide
  readonly with: KnownSide
  /** Integrated loudness behind each stage, by the samples it was measured on. */
  readonly tapLoudness: ReadonlyMap<Float32Array, number | null>
}

/** How the time goes, roughly: rendering and measuring either side, then the stages one by one. */
const SHARES = { without: 0.35, with: 0.8 } as const

/**
 * Renders both sides of a comparison and measures everything that is shown about them, in steps: yields the share
 * done, returns the evidence and what to pass in next time.
 */
export function* workOutEvidence(
  take: Sound,
  chains: { readonly without: ChainDoc; readonly with: ChainDoc },
  loop: FrameRange | null,
  cache: EvidenceCache | null,
): Generator<number, { evidence: Evidence; cache: EvidenceCache }, void> {
  const without = yield* knownSide(take, chains.without, cache?.without, 0, SHARES.without)
  const withSide = yield* knownSide(take, chains.with, cache?.with, SHARES.without, SHARES.with)
  const tapLoudness = new Map<Float32Array, number | null>()
  for (const channels of [take.channels, ...tapsOf(withSide).map((tap) => tap.channels)]) {
    const [key] = channels
    if (!key || tapLoudness.has(key)) continue
    const behind = excerpt({ sampleRate: take.sampleRate, channels }, 0, frameCount(take))
    tapLoudness.set(
      key,
      cache?.tapLoudness.has(key) ? (cache.tapLoudness.get(key) ?? null) : integratedLoudness(behind),
    )
    yield SHARES.with
  }
  const evidence: Evidence = {
    without: without.evidence,
    with: withSide.evidence,
    stages: stageEvidence(take, withSide, tapLoudness),
    matching: matchingGains(without.rendering.sound, withSide.rendering.sound, loop),
    chains,
  }
  return { evidence, cache: { without, with: withSide, tapLoudness } }
}

function* knownSide(
  take: Sound,
  chain: ChainDoc,
  known: KnownSide | undefined,
  from: number,
  to: number,
): Generator<number, KnownSide, void> {
  const sameTake = known?.rendering.kept?.source === take
  if (known && sameTake && JSON.stringify(known.chain) === JSON.stringify(chain)) return known
  const steps = renderSteps(take, chain, { keep: true, ...(known && { previous: known.rendering }) })
  let step = steps.next()
  while (!step.done) {
    yield from + (to - from) * 0.5 * step.value
    step = steps.next()
  }
  const rendering = step.value
  return { chain, rendering, evidence: sideEvidence(rendering.sound) }
}

function sideEvidence(sound: Sound): SideEvidence {
  return {
    measures: measure(sound),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  }
}

function tapsOf({ rendering }: KnownSide) {
  return rendering.kept?.taps ?? []
}

function stageEvidence(
  take: Sound,
  side: KnownSide,
  tapLoudness: ReadonlyMap<Float32Array, number | null>,
): ReadonlyMap<string, StageEvidence> {
  const stages = new Map<string, StageEvidence>()
  let before = loudnessOf(take.channels, tapLoudness)
  for (const { stage, channels } of tapsOf(side)) {
    const behind = loudnessOf(channels, tapLoudness)
    const trace = side.rendering.traces.get(stage.id) ?? null
    stages.set(stage.id, {
      loudnessChangeLu: behind === null || before === null ? null : behind - before,
      reduction: trace && reductionSummary(trace),
      trace,
    })
    before = behind
  }
  return stages
}

function loudnessOf(
  channels: readonly Float32Array[],
  tapLoudness: ReadonlyMap<Float32Array, number | null>,
) {
  const [key] = channels
  return key ? (tapLoudness.get(key) ?? null) : null
}
