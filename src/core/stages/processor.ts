import { framesOf, SETTING_FADE_MS } from '../dsp/dynamics/time-constant'

/** Frames that processors with scratch buffers work on at a time: small enough for the nearest cache. */
export const CHUNK_FRAMES = 128

/** Where a processor runs. */
export interface ProcessorHost {
  /** Frames per second, Hz: 8000 to 192000. */
  readonly sampleRate: number
  readonly channelCount: number
  /**
   * Delay to reserve for lookahead, ms, whatever lookahead is set, so that it can change while the sound runs. Without
   * it, the delay is the lookahead that the processor was made with.
   */
  readonly maxLookaheadMs?: number
  /** Whether settings never change while it runs, as in a render: then nothing is prepared for fades. */
  readonly staticSettings?: boolean
}

/** Frames over which a stage on `host` fades to new settings; 0 for at once. */
export function settingFadeFrames({ sampleRate, staticSettings }: ProcessorHost): number {
  return staticSettings ? 0 : framesOf(SETTING_FADE_MS, sampleRate)
}

/** Receives the gain reduction of a stage as it is computed, piece by piece in the order of time. */
export interface ReductionReader {
  /** @param reductionsDb gain reduction of the next `count` frames, dB, 0 or more, without makeup; overwritten later */
  read(reductionsDb: Float64Array, count: number): void
}

/** Receives the level that a stage's detector sees, piece by piece in the order of time. */
export interface LevelReader {
  /** @param levels of the next `count` frames, linear, full scale = 1; overwritten later */
  read(levels: Float64Array, count: number): void
}

/** A running stage. Everything but construction is safe on the audio thread: no allocation in `process`, no exceptions, no clock. */
export interface Processor<Settings> {
  /** Frames by which the output lags the input. Never changes. */
  readonly latencyFrames: number
  /** Takes effect smoothly from the next frame on; at once before the first frame. */
  set(settings: Settings): void
  /** Processes the first `frames` of every channel in place; stages that reduce gain report it to `reader`. */
  process(channels: readonly Float32Array[], frames: number, reader?: ReductionReader): void
  /**
   * Of stages that reduce gain: reports to `reader` what `process` would, and leaves the sound alone. For callers who
   * need no sound of this stage: in one run, either process everything or trace everything.
   */
  trace?(channels: readonly Float32Array[], frames: number, reader: ReductionReader): void
  /**
   * Of stages with a detector: reports to `reader` the level that it sees, and leaves the sound alone. In one run, do
   * nothing else.
   */
  readLevels?(channels: readonly Float32Array[], frames: number, reader: LevelReader): void
  /** Back to the state of a new one. */
  reset(): void
}

/** Makes the processors of one kind of stage. */
export interface ProcessorMaker<Settings> {
  create(settings: Settings, host: ProcessorHost): Processor<Settings>
  /** Where there is a cheaper way to the very output that `create` gives with the definition's idle settings. */
  createIdle?(settings: Settings, host: ProcessorHost): Processor<Settings>
}
