import type { ChainDoc, FrameRange } from '../../core'

/** Names under which the audio thread's processors are registered and asked for. */
export const LISTEN_PROCESSOR = 'evenhand-listen'

/** Which side of a comparison is heard. */
export type SideName = 'bypassed' | 'processed'

/** What is sent to the monitor: one of the two sides, or their difference, processed minus bypassed. */
export type Heard = SideName | 'difference'

/** Everything about how a take is listened to, apart from where in it. Levels in dB. */
export interface ListenSettings {
  readonly bypassed: ChainDoc
  readonly processed: ChainDoc
  /** Gain of each side, so that both are equally loud. */
  readonly bypassedGainDb: number
  readonly processedGainDb: number
  readonly heard: Heard
  /** The stage of the processed side whose difference is heard; null: the difference of the two sides. */
  readonly differenceStageId: string | null
  readonly monitorDb: number
  readonly backing: { readonly on: boolean; readonly levelDb: number; readonly offsetFrames: number }
}

/** Samples handed to the audio thread: planar, one array a channel. */
export type Planar = readonly Float32Array[]

/** From the page to the audio thread. Frames are those of the take. */
export type ToThread =
  /** A part of the take, to be put in its place. All of them come before anything is played. */
  | { readonly type: 'take-part'; readonly fromFrame: number; readonly channels: Planar }
  | { readonly type: 'settings'; readonly settings: ListenSettings }
  | { readonly type: 'backing'; readonly channels: Planar | null }
  | { readonly type: 'play'; readonly fromFrame: number; readonly request: number }
  | { readonly type: 'stop' }
  | { readonly type: 'loop'; readonly loop: FrameRange | null }

/** From the audio thread to the page, at most 30 times a second. */
export interface Report {
  readonly type: 'report'
  /** Of the last message `play` that has arrived. */
  readonly request: number
  readonly running: boolean
  /** The frame of the take that is leaving the engine now. */
  readonly positionFrame: number
  /** Lowest gain of each stage of the processed side since the last report, dB. */
  readonly stageGainsDb: Float32Array
  /** Highest magnitude sent to the output since the last report, linear. */
  readonly peak: number
  /** Loudness of the last 400 ms sent to the output, LUFS; -Infinity for silence. */
  readonly momentaryLufs: number
}

/**
 * What the listening processor is made with. The take itself comes in parts: the browser keeps a copy of what a
 * processor is made with for as long as it lives.
 */
export interface ListenOptions {
  readonly channelCount: number
  readonly frames: number
  readonly settings: ListenSettings
}
