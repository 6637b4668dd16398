import { useEffect, useMemo, useState } from 'react'
import { frameCount, type Sound, type StageDoc } from '../../../core'
import { covers, type RangeSamples, samplesAround, takeSamples } from '../../../session/take/range-samples'
import { useApp, useEvidence, useTake } from '../../context/app-context'
import type { TimeView } from '../time/time-view'

export type { RangeSamples } from '../../../session/take/range-samples'

/** Frames of the finest peaks: of fewer in a pixel the samples are drawn. */
const FINEST_PEAK_FRAMES = 64
/** Views move on while they are zoomed: what is seen for less than this is not asked for, ms. */
const REST_MS = 120

/** Samples of both sides that lie around what is seen, the first of them at frame `from` of the take. */
export interface SidesSamples {
  readonly bypassed: RangeSamples | null
  readonly processed: RangeSamples | null
}

/**
 * The samples of both sides where the finest peaks are too coarse to draw what is seen; null where they are not, or not
 * known yet. Of a side that runs through no stage they are those of the take; others are worked out once the view rests,
 * and stay until newer ones have come.
 */
export function useRangeSamples(view: TimeView, widthPx: number): SidesSamples {
  const sound = useTake(({ take }) => take?.sound ?? null)
  const isFine = (view.to - view.from) / Math.max(1, widthPx) < FINEST_PEAK_FRAMES
  const wanted = isFine ? sound : null
  const bypassed = useSideSamples(
    wanted,
    useEvidence(({ evidence }) => evidence?.chains.bypassed.stages ?? null),
    view,
  )
  const processed = useSideSamples(
    wanted,
    useEvidence(({ evidence }) => evidence?.chains.processed.stages ?? null),
    view,
  )
  return useMemo(() => ({ bypassed, processed }), [bypassed, processed])
}

/** What was worked out last, and of what. */
interface Known {
  readonly sound: Sound
  readonly stages: readonly StageDoc[]
  readonly samples: RangeSamples
}

/** @param sound null where no samples are wanted */
function useSideSamples(
  sound: Sound | null,
  stages: readonly StageDoc[] | null,
  view: TimeView,
): RangeSamples | null {
  const app = useApp()
  const [known, setKnown] = useState<Known | null>(null)
  const isTake = stages?.every(({ on }) => !on) ?? false
  const ofTake = useMemo(() => (sound && isTake ? takeSamples(sound) : null), [sound, isTake])
  const isSeen =
    known !== null &&
    sound !== null &&
    known.sound === sound &&
    covers(known.samples, view, frameCount(sound))
  const isKnown = isSeen && known.stages === stages
  useEffect(() => {
    if (!sound || !stages || isTake || isKnown) return
    const abort = new AbortController()
    const { signal } = abort
    const later = setTimeout(async () => {
      // Where they cannot be worked out, the peaks go on being drawn; what is wrong is told with the figures.
      const samples = await samplesAround(app, stages, view, sound, signal).catch(() => null)
      if (samples && !signal.aborted) setKnown({ sound, stages, samples })
    }, REST_MS)
    return () => {
      clearTimeout(later)
      abort.abort()
    }
  }, [app, sound, stages, isTake, isKnown, view])
  return ofTake ?? (isSeen && !isTake ? known.samples : null)
}
