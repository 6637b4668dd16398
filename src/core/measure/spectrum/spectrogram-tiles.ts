import type { FrameRange } from '../../sound/frame-range'

/** Columns of a tile. */
export const TILE_COLUMNS = 512

/** Frames of a column, powers of two: from about a millisecond to more than a second. */
const FINEST_HOP = 2 ** 6
const COARSEST_HOP = 2 ** 16
/** A column of a picture is drawn at most so wide, pixels. */
const WIDEST_COLUMN_PX = 2

/** A piece of a spectrogram: {@link TILE_COLUMNS} columns of so many frames, counted in tiles from frame 0 on. */
export interface SpectrogramTile {
  readonly hopFrames: number
  readonly index: number
}

/** Frames of a column in a picture of so many frames for each pixel: a power of two, as coarse as can be. */
export function tileHopFor(framesPerPixel: number): number {
  const power = Math.floor(Math.log2(Math.max(1, framesPerPixel * WIDEST_COLUMN_PX)))
  return Math.min(COARSEST_HOP, Math.max(FINEST_HOP, 2 ** power))
}

/** The tiles that show `range` of a sound of so many frames, in order. */
export function tilesIn(range: FrameRange, hopFrames: number, frames: number): readonly SpectrogramTile[] {
  const tileFrames = hopFrames * TILE_COLUMNS
  const first = Math.floor(Math.max(0, range.from) / tileFrames)
  const end = Math.ceil(Math.min(frames, range.to) / tileFrames)
  return Array.from({ length: Math.max(0, end - first) }, (_, k) => ({ hopFrames, index: first + k }))
}

/** The frames that a tile shows. */
export function tileRange({ hopFrames, index }: SpectrogramTile): FrameRange {
  const tileFrames = hopFrames * TILE_COLUMNS
  return { from: index * tileFrames, to: (index + 1) * tileFrames }
}

/** The tile of columns twice as long that shows the same and more; null where there are none so long. */
export function coarserTile({ hopFrames, index }: SpectrogramTile): SpectrogramTile | null {
  return hopFrames < COARSEST_HOP ? { hopFrames: hopFrames * 2, index: Math.floor(index / 2) } : null
}
