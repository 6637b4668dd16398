import type { FrameRange } from '../../../core'
import { type TimeView, xOfFrame } from '../time/time-view'
import styles from './loop-mark.module.css'

/** The loop as a tinted stretch over all lanes, with a line and a grip at each end that is seen. */
export function LoopMark({ range, view }: { range: FrameRange | null; view: TimeView }) {
  if (!range) return null
  const from = xOfFrame(view, range.from, 100)
  const to = xOfFrame(view, range.to, 100)
  const [left, right] = [Math.max(0, from), Math.min(100, to)]
  if (right <= left) return null
  return (
    <div className={styles.loop} style={{ left: `${left}%`, width: `${right - left}%` }}>
      {from >= 0 && <i className={styles.start} />}
      {to <= 100 && <i className={styles.end} />}
    </div>
  )
}
