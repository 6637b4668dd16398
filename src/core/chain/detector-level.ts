import { gainToDb } from '../sound/decibels'
import { frameCount, type Sound } from '../sound/sound'
import type { Steps } from '../sound/steps'
import type { StageDoc } from '../stages'
import type { LevelReader } from '../stages/processor'
import { createProcessor } from '../stages/processors'
import { levelStage } from '../stages/stage-detector'
import { RUN_FRAMES } from './run-stage'

/** Between two values of a level along the take, seconds: those of 20 minutes take 960 kB. */
const HOP_SECONDS = 0.005

/** What is lower counts as silent, dBFS. */
export const SILENT_DBFS = -120

/** The level that a stage's detector sees along a sound: the highest in each hop, so that no peak is missed. */
export interface DetectorLevel {
  readonly hopFrames: number
  /** dBFS, {@link SILENT_DBFS} or more, one value a hop from the first frame on. */
  readonly levelDbfs: Float32Array
}

/** Frames a hop of a detector's level, at a sample rate in Hz. */
export function levelHopFrames(sampleRate: number): number {
  return Math.max(1, Math.round(HOP_SECONDS * sampleRate))
}

/**
 * The level that the detector of `stage` sees in `sound`, in steps: by its own processor, with its detector settings,
 * whatever else is set and whether it is on. Each value stands where its sound is: lookahead does not move it. Null
 * where the stage has no detector.
 */
export function* detectorLevelSteps(sound: Sound, stage: StageDoc): Steps<DetectorLevel | null> {
  const detecting = levelStage(stage)
  if (!detecting) return null
  const { sampleRate, channels } = sound
  const host = { sampleRate, channelCount: channels.length, staticSettings: true }
  const processor = createProcessor(detecting, host)
  const frames = frameCount(sound)
  const builder = new LevelBuilder(frames, levelHopFrames(sampleRate))
  for (let from = 0; from < frames; from += RUN_FRAMES) {
    const count = Math.min(RUN_FRAMES, frames - from)
    const block = channels.map((samples) => samples.subarray(from, from + count))
    processor.readLevels?.(block, count, builder)
    yield (from + count) / frames
  }
  return builder.level
}

/** Collects levels, frame by frame, into the highest of each hop. */
class LevelBuilder implements LevelReader {
  readonly level: DetectorLevel
  private nextFrame = 0

  constructor(
    frames: number,
    private readonly hopFrames: number,
  ) {
    this.level = {
      hopFrames,
      levelDbfs: new Float32Array(Math.ceil(frames / hopFrames)).fill(SILENT_DBFS),
    }
  }

  read(levels: Float64Array, count: number): void {
    const { nextFrame, hopFrames } = this
    const { levelDbfs } = this.level
    for (let n = 0; n < count; ) {
      const hop = Math.floor((nextFrame + n) / hopFrames)
      const end = Math.min(count, (hop + 1) * hopFrames - nextFrame)
      let highest = 0
      for (; n < end; n++) {
        const level = levels[n] ?? 0
        if (level > highest) highest = level
      }
      levelDbfs[hop] = Math.max(levelDbfs[hop] ?? SILENT_DBFS, gainToDb(highest))
    }
    this.nextFrame = nextFrame + count
  }
}
