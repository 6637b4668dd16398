import { partOf, type SpectrogramTile, spectrogramSteps, TILE_COLUMNS, tileRange } from '../../core'
import type { SoundAddress } from '../address'
import type { Job } from './job'

export interface SpectrogramInput extends SoundAddress {
  /** At least one, those that are wanted first at the beginning. */
  readonly tiles: readonly SpectrogramTile[]
}

/** One tile, as soon as it is known; levels as in `spectrogram`. */
export interface TilePiece {
  readonly tile: SpectrogramTile
  readonly levels: Uint8Array<ArrayBuffer>
}

/** Longer than half of any window, seconds. */
const WINDOW_SECONDS = 0.1

/** How much of the work the sound is, where it has to be rendered. */
const SOUND_PART = 0.5

/** Works out tiles of the spectrogram of a sound, and tells each as it is found. */
export const spectrogramJob: Job<SpectrogramInput, null, TilePiece> = function* (
  { take, stages, tiles },
  tools,
) {
  const ranges = tiles.map(tileRange)
  const reach = WINDOW_SECONDS * tools.take.sampleRate
  const range = {
    from: Math.min(...ranges.map(({ from }) => from)) - reach,
    to: Math.max(...ranges.map(({ to }) => to)) + reach,
  }
  const near = yield* partOf(tools.soundNear({ take, stages }, range), 0, SOUND_PART)
  for (const [k, tile] of tiles.entries()) {
    const done = SOUND_PART + (1 - SOUND_PART) * (k / tiles.length)
    const { hopFrames } = tile
    const columns = { fromFrame: tileRange(tile).from - near.from, hopFrames, count: TILE_COLUMNS }
    const levels = yield* partOf(spectrogramSteps(near.sound, columns), done, done)
    tools.tell({ tile, levels })
    yield done
  }
  return null
}
