/** Frames from `from` up to, but not including, `to`. */
export interface FrameRange {
  readonly from: number
  readonly to: number
}
