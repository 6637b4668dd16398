import { useEffect, useReducer, useRef, useState } from 'react'
import {
  frameCount,
  type Sound,
  type SpectrogramTile,
  type StageDoc,
  tileHopFor,
  tilesIn,
} from '../../../core'
import { SpectrogramTiles } from '../../../session/take/spectrogram'
import { useApp, useEvidence, useListen } from '../../context/app-context'
import type { TimeView } from '../time/time-view'

/** What a spectrogram is drawn from. */
export interface SeenSpectrogram {
  /** Frames of a column. */
  readonly hopFrames: number
  /** Levels of a tile of the side that is heard, or of what it was before where those have not come yet. */
  levelsOf(tile: SpectrogramTile): Uint8Array | undefined
  /** Another whenever a tile has come. */
  readonly come: number
  /** Whether all that is seen is there. */
  readonly isWhole: boolean
  /** Why it could not be worked out, made to be shown. */
  readonly problem: string | null
}

/** The spectrogram of the side that is heard, as far as it is known; the rest is worked out, then that of the other side. */
export function useSpectrogram(sound: Sound, view: TimeView, width: number): SeenSpectrogram {
  const { compute } = useApp()
  const [tiles] = useState(() => new SpectrogramTiles(compute))
  const [come, count] = useReducer((before: number) => before + 1, 0)
  const [problem, setProblem] = useState<string | null>(null)
  const side = useListen((state) => state.side)
  const bypassed = useEvidence(({ evidence }) => evidence?.chains.bypassed.stages ?? null)
  const processed = useEvidence(({ evidence }) => evidence?.chains.processed.stages ?? null)
  const heard = side === 'processed' ? processed : bypassed
  const other = side === 'processed' ? bypassed : processed
  const hopFrames = tileHopFor((view.to - view.from) / Math.max(1, width))
  const seen = tilesIn(view, hopFrames, frameCount(sound))
  const isWhole = heard !== null && seen.every((tile) => tiles.get(heard, tile) !== undefined)
  /** The stages of what was drawn whole last. */
  const before = useRef<readonly StageDoc[] | null>(null)

  useEffect(() => {
    if (isWhole) before.current = heard
  }, [isWhole, heard])
  useEffect(() => {
    if (!heard || !other || width === 0) return
    const wanted = [heard, other].map((stages) => ({
      stages,
      tiles: tilesIn(view, hopFrames, frameCount(sound)),
    }))
    let isShown = true
    tiles.want(wanted, count).then(
      () => isShown && setProblem(null),
      (error: Error) => isShown && setProblem(error.message),
    )
    return () => {
      isShown = false
    }
  }, [tiles, sound, heard, other, view, width, hopFrames])
  useEffect(() => () => tiles.leave(), [tiles])

  return {
    hopFrames,
    levelsOf: (tile) =>
      (heard ? tiles.get(heard, tile) : undefined) ??
      (before.current ? tiles.get(before.current, tile) : undefined),
    come,
    isWhole,
    problem,
  }
}
