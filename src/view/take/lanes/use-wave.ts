import { useMemo } from 'react'
import type { PeakPyramid } from '../../../core'
import type { RangeSamples } from '../samples/use-range-samples'
import type { TimeView } from '../time/time-view'
import { framesPerPixel, sampleColumns, waveColumns } from './wave-geometry'
import type { Column } from './wave-scale'

/** Up to so many frames in a pixel the wave is a line from sample to sample. */
const LINE_FRAMES = 3

/** What is seen of one side. */
export interface SeenWave {
  readonly columns: readonly Column[]
  /** Where cycles are seen singly. */
  readonly samples: RangeSamples | null
}

/** What is seen of one side: from its samples where they are there, else from its peaks. */
export function useWave(
  peaks: PeakPyramid | undefined,
  samples: RangeSamples | null,
  view: TimeView,
  width: number,
): SeenWave {
  return useMemo(() => {
    if (!peaks || !(width > 0)) return { columns: [], samples: null }
    if (!samples) return { columns: waveColumns(peaks, view, width), samples: null }
    return {
      columns: sampleColumns(samples, view, width),
      samples: framesPerPixel(view, width) <= LINE_FRAMES ? samples : null,
    }
  }, [peaks, samples, view, width])
}
