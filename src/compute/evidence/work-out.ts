import {
  type ChainDoc,
  excerpt,
  frameCount,
  hasSibilantBand,
  integratedLoudness,
  longTermSpectrum,
  loudnessOverTime,
  measureSteps,
  type Pauses,
  pausesOf,
  peakPyramid,
  type Rendering,
  reductionSummary,
  renderSteps,
  type SibilantEvent,
  type Sound,
  sameSound,
  sibilantEventSteps,
  subBlockEnergySteps,
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
  readonly bypassed: KnownSide
  readonly processed: KnownSide
  /** Integrated loudness behind each stage, by the samples it was measured on. */
  readonly tapLoudness: ReadonlyMap<Float32Array, number | null>
  readonly places: Places
}

/** Where in the take both sides are measured for what is not everywhere: noise floor and sibilance. */
interface Places {
  readonly pauses: Pauses | null
  readonly sibilants: readonly SibilantEvent[]
}

/**
 * Segments of the average spectrum: all of them in takes of up to a minute; of longer ones so many, spread evenly,
 * that they still cover more than half of four minutes.
 */
const MOST_SEGMENTS = 400

/** Between two points of the loudness lane. */
const HOP_SECONDS = 0.1

/** How the time goes, roughly: rendering and measuring either side, then the stages one by one. */
const SHARES = { bypassed: 0.35, processed: 0.9 } as const

/**
 * Renders both sides of a comparison and measures everything that is shown about them, in steps: yields the share
 * done, returns the evidence and what to pass in next time. Of a side that is as it was, the evidence is the very
 * object it was; of a stage whose trace is, the trace.
 */
export function* workOutEvidence(
  take: Sound,
  chains: { readonly bypassed: ChainDoc; readonly processed: ChainDoc },
  loop: FrameRange | null,
  cache: EvidenceCache | null,
): Generator<number, { evidence: Evidence; cache: EvidenceCache }, void> {
  const places = cache?.processed.rendering.kept?.source === take ? cache.places : yield* placesIn(take)
  const source = { take, places }
  const bypassed = yield* knownSide(source, chains.bypassed, cache?.bypassed, 0, SHARES.bypassed)
  const processed = yield* knownSide(
    source,
    chains.processed,
    cache?.processed,
    SHARES.bypassed,
    SHARES.processed,
  )
  const tapLoudness = yield* loudnessOfTaps(take, processed, cache?.tapLoudness)
  const evidence: Evidence = {
    bypassed: bypassed.evidence,
    processed: processed.evidence,
    stages: stageEvidence(take, processed, tapLoudness),
    matching: matchingGains(bypassed.rendering.sound, processed.rendering.sound, loop, {
      bypassed: bypassed.evidence.measures.integratedLufs,
      processed: processed.evidence.measures.integratedLufs,
    }),
    chains,
  }
  return { evidence, cache: { bypassed, processed: processed, tapLoudness, places } }
}

/** What is processed, and where it is looked at. */
interface Source {
  readonly take: Sound
  readonly places: Places
}

function* placesIn(take: Sound): Generator<number, Places, void> {
  const pauses = pausesOf(take)
  yield 0
  const sibilants = hasSibilantBand(take) ? yield* partOf(sibilantEventSteps(take), 0, 0, 0, 1) : []
  return { pauses, sibilants }
}

function* knownSide(
  { take, places }: Source,
  chain: ChainDoc,
  known: KnownSide | undefined,
  from: number,
  to: number,
): Generator<number, KnownSide, void> {
  const sameTake = known?.rendering.kept?.source === take
  if (known && sameTake && sameSound(known.chain, chain)) return known
  const steps = renderSteps(take, chain, { keep: true, ...(known && { previous: known.rendering }) })
  let step = steps.next()
  while (!step.done) {
    yield from + (to - from) * RENDERING_SHARE * step.value
    step = steps.next()
  }
  const rendering = step.value
  const measuredFrom = from + (to - from) * RENDERING_SHARE
  const evidence = yield* sideEvidence(rendering.sound, places, measuredFrom, to)
  return { chain, rendering, evidence }
}

const RENDERING_SHARE = 0.6

function* sideEvidence(
  sound: Sound,
  places: Places,
  from: number,
  to: number,
): Generator<number, SideEvidence, void> {
  const energies = yield* partOf(subBlockEnergySteps(sound), from, to, 0, 0.2)
  const measures = yield* partOf(measureSteps(sound, { energies, ...places }), from, to, 0.2, 0.5)
  const loudness = loudnessOverTime(sound, HOP_SECONDS, energies)
  yield from + (to - from) * 0.5
  const peaks = peakPyramid(sound)
  yield from + (to - from) * 0.6
  const spectrum = longTermSpectrum(sound, { mostSegments: MOST_SEGMENTS })
  yield to
  return { measures, loudness, peaks, spectrum }
}

/** Steps that are the part from `begin` to `end` of what goes from `from` to `to`. */
function* partOf<Result>(
  steps: Generator<number, Result, void>,
  from: number,
  to: number,
  begin: number,
  end: number,
): Generator<number, Result, void> {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    yield from + (to - from) * (begin + (end - begin) * step.value)
  }
}

/** Integrated loudness of the take and behind each stage that is on. The last one's is that of the whole side. */
function* loudnessOfTaps(
  take: Sound,
  side: KnownSide,
  known: EvidenceCache['tapLoudness'] | undefined,
): Generator<number, EvidenceCache['tapLoudness'], void> {
  const found = new Map<Float32Array, number | null>()
  const [end] = tapsOf(side).at(-1)?.channels ?? []
  if (end) found.set(end, side.evidence.measures.integratedLufs)
  const stagesOn = tapsOf(side).filter(({ stage }) => stage.on)
  for (const channels of [take.channels, ...stagesOn.map((tap) => tap.channels)]) {
    const [key] = channels
    if (!key || found.has(key)) continue
    const before = known?.get(key)
    const behind = excerpt({ sampleRate: take.sampleRate, channels }, 0, frameCount(take))
    found.set(key, before === undefined ? integratedLoudness(behind) : before)
    yield SHARES.processed
  }
  return found
}

function tapsOf({ rendering }: KnownSide) {
  return rendering.kept?.taps ?? []
}

function stageEvidence(
  take: Sound,
  side: KnownSide,
  tapLoudness: EvidenceCache['tapLoudness'],
): ReadonlyMap<string, StageEvidence> {
  const stages = new Map<string, StageEvidence>()
  let before = loudnessOf(take.channels, tapLoudness)
  for (const { stage, channels } of tapsOf(side)) {
    const behind = stage.on ? loudnessOf(channels, tapLoudness) : before
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

function loudnessOf(channels: readonly Float32Array[], tapLoudness: EvidenceCache['tapLoudness']) {
  const [key] = channels
  return key ? (tapLoudness.get(key) ?? null) : null
}
