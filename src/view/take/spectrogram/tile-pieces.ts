import { coarserTile, type SpectrogramTile, TILE_COLUMNS, tileRange, tilesIn } from '../../../core'
import { type TimeView, xOfFrame } from '../time/time-view'

/** A part of a tile and where it is drawn. */
export interface TilePiece {
  readonly levels: Uint8Array
  /** Columns of the tile; their ends may lie within one. */
  readonly fromColumn: number
  readonly toColumn: number
  /** From edge to edge, whole pixels: neighbours share them. */
  readonly left: number
  readonly right: number
}

/**
 * What is seen of a spectrogram, from its tiles of `hopFrames` where they are known, else from the next coarser ones
 * that are.
 * @param levelsOf undefined for tiles that are not known
 */
export function tilePieces(
  view: TimeView,
  widthPx: number,
  frames: number,
  hopFrames: number,
  levelsOf: (tile: SpectrogramTile) => Uint8Array | undefined,
): readonly TilePiece[] {
  return tilesIn(view, hopFrames, frames).flatMap((tile) => {
    const { from, to } = tileRange(tile)
    const seen = { from: Math.max(from, view.from), to: Math.min(to, view.to) }
    let source: SpectrogramTile | null = tile
    let levels = levelsOf(tile)
    while (!levels && source) {
      source = coarserTile(source)
      levels = source ? levelsOf(source) : undefined
    }
    if (!source || !levels) return []
    const start = tileRange(source).from
    const columnOf = (frame: number) => Math.min(TILE_COLUMNS, (frame - start) / (source?.hopFrames ?? 1))
    return [
      {
        levels,
        fromColumn: columnOf(seen.from),
        toColumn: columnOf(seen.to),
        left: Math.round(xOfFrame(view, seen.from, widthPx)),
        right: Math.round(xOfFrame(view, seen.to, widthPx)),
      },
    ]
  })
}
