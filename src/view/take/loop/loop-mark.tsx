import type { FrameRange } from '../../../core'
import { type TimeView, xOfFrame } from '../time/time-view'
import styles from './loop-mark.module.css'

/** The loop as a tinted stretch over all lanes, with a line at each end. */
export function LoopMark({ range, view }: { range: FrameRange | null; view: TimeView }) {
  if (!range) return null
  const left = Math.max(0, xOfFrame(view, range.from, 100))
  const right = Math.min(100, xOfFrame(view, range.to, 100))
  if (right <= left) return null
  return <div className={styles.loop} style={{ left: `${left}%`, width: `${right - left}%` }} />
}
