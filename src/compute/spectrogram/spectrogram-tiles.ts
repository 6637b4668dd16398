import type { SpectrogramTile, StageDoc } from '../../core'
import { soundKey } from '../address'
import type { Compute } from '../compute'

/** Tiles of the spectrogram of one sound. */
export interface TilesWanted {
  /** The stages that the take runs through. */
  readonly stages: readonly StageDoc[]
  /** Those that are wanted first at the beginning. */
  readonly tiles: readonly SpectrogramTile[]
}

/** Views move on while they are zoomed or dragged: what is seen for less than this is not worked out, ms. */
const REST_MS = 120

/** The tiles of a spectrogram's picture: those that are known, and those that are missing worked out. Newest wins. */
export class SpectrogramTiles {
  private abort = new AbortController()
  /** Names what is being worked out; null for nothing. */
  private asked: string | null = null

  constructor(private readonly compute: Pick<Compute, 'run' | 'takeHash' | 'tiles'>) {}

  /** Levels of a tile, as in `spectrogram`; undefined where they are not known. */
  get(stages: readonly StageDoc[], tile: SpectrogramTile): Uint8Array | undefined {
    const key = this.keyOf(stages, tile)
    return key === null ? undefined : this.compute.tiles.get(key)
  }

  /**
   * Has what is missing worked out, sound by sound, in place of anything asked before.
   * @param onTile called for each tile that has come
   * @returns when all is known, or something newer is asked for
   * @throws ComputeError when it could not be worked out
   */
  async want(wanted: readonly TilesWanted[], onTile: () => void): Promise<void> {
    const missing = wanted
      .map(({ stages, tiles }) => ({ stages, tiles: tiles.filter((tile) => !this.get(stages, tile)) }))
      .filter(({ tiles }) => tiles.length > 0)
    const asked = missing
      .flatMap(({ stages, tiles }) => tiles.map((tile) => this.keyOf(stages, tile)))
      .join('\n')
    if (asked === this.asked) return
    this.leave()
    if (missing.length === 0) return
    const abort = new AbortController()
    this.abort = abort
    this.asked = asked
    await new Promise((resolve) => setTimeout(resolve, REST_MS))
    try {
      for (const each of missing) if (!abort.signal.aborted) await this.workOut(each, abort.signal, onTile)
    } finally {
      if (this.abort === abort) this.asked = null
    }
  }

  /** Gives up what is being worked out. */
  leave(): void {
    this.abort.abort()
    this.asked = null
  }

  private async workOut(
    { stages, tiles }: TilesWanted,
    signal: AbortSignal,
    onTile: () => void,
  ): Promise<void> {
    await this.compute.run('spectrogram', (take) => ({ take, stages, tiles }), {
      priority: 'study',
      signal,
      onPiece: ({ tile, levels }) => {
        const key = this.keyOf(stages, tile)
        if (key === null || signal.aborted) return
        this.compute.tiles.put(key, levels, levels.byteLength)
        onTile()
      },
    })
  }

  /** Null without a take. */
  private keyOf(stages: readonly StageDoc[], { hopFrames, index }: SpectrogramTile): string | null {
    const { takeHash: take } = this.compute
    return take === null ? null : `${soundKey({ take, stages })}\n${hopFrames} ${index}`
  }
}
