import { useMemo } from 'react'
import { useEvidence, useTake } from '../../context/app-context'
import type { TimeView } from '../time/time-view'

/** Samples of a range of the take, channel by channel, the first of them at frame `from`. */
export interface RangeSamples {
  readonly from: number
  readonly channels: readonly Float32Array[]
}

/** The samples of both sides where peaks are too coarse to draw what is seen; null where they do or are not there. */
export function useRangeSamples(
  view: TimeView,
  widthPx: number,
): { readonly bypassed: RangeSamples | null; readonly processed: RangeSamples | null } {
  const sound = useTake(({ take }) => take?.sound ?? null)
  const isTake = useEvidence(
    ({ evidence }) => evidence?.chains.bypassed.stages.every(({ on }) => !on) ?? false,
  )
  const isFine = (view.to - view.from) / Math.max(1, widthPx) < FINEST_PEAK_FRAMES
  return useMemo(
    () => ({
      bypassed: sound && isTake && isFine ? { from: 0, channels: sound.channels } : null,
      processed: null,
    }),
    [sound, isTake, isFine],
  )
}

/** Frames of the finest peaks: of fewer in a pixel the samples are drawn. */
const FINEST_PEAK_FRAMES = 64
