import { type RefObject, useEffect, useRef } from 'react'
import { useApp, useListen } from '../../context/app-context'
import { CEILING_DBFS, largestReductionDb, outputShare, PeakHold, reductionShare } from './meter-geometry'
import styles from './meters.module.css'
import { OutputLevels } from './output-levels'
import { ReductionLevel } from './reduction-level'

/** Levels at the output and gain reduction, as bars of ink with the peak held; each with its figures. */
export function Meters() {
  const bypassed = useListen(({ heard }) => heard === 'bypassed')
  const output = useRef<HTMLDivElement>(null)
  const reduction = useRef<HTMLDivElement>(null)
  useMeters(output, reduction)
  return (
    <div className={styles.meters}>
      <OutputLevels />
      <div ref={output} className={styles.meter} aria-hidden="true">
        <i className={styles.bar} />
        <i className={styles.hold} />
        <i className={styles.ceiling} style={{ insetInlineStart: `${100 * outputShare(CEILING_DBFS)}%` }} />
      </div>
      <ReductionLevel />
      <div
        ref={reduction}
        className={styles.meter}
        // The side that is heard has no part in it.
        data-ghost={bypassed}
        aria-hidden="true"
      >
        <i className={styles.bar} />
        <i className={styles.hold} />
      </div>
    </div>
  )
}

/** Draws what the audio thread reports past React: thirty times a second. Nothing is reported while sides are hidden. */
function useMeters(
  output: RefObject<HTMLDivElement | null>,
  reduction: RefObject<HTMLDivElement | null>,
): void {
  const { listen } = useApp()
  useEffect(() => {
    const holds = { output: new PeakHold(), reduction: new PeakHold() }
    return listen.subscribe(({ playing, outputPeakDb, stageGainsDb }, before) => {
      if (
        outputPeakDb === before.outputPeakDb &&
        stageGainsDb === before.stageGainsDb &&
        playing === before.playing
      )
        return
      if (!playing) for (const hold of Object.values(holds)) hold.clear()
      const now = performance.now()
      const peakShare = playing ? outputShare(outputPeakDb) : 0
      const reducedShare = playing ? reductionShare(largestReductionDb(stageGainsDb)) : 0
      draw(output.current, peakShare, holds.output.next(peakShare, now))
      draw(reduction.current, reducedShare, holds.reduction.next(reducedShare, now))
    })
  }, [listen, output, reduction])
}

function draw(meter: HTMLElement | null, share: number, held: number): void {
  const [bar, hold] = meter?.children ?? []
  if (bar instanceof HTMLElement) place(bar, 'scale', share, `${share} 1`)
  if (hold instanceof HTMLElement) place(hold, 'inset-inline-start', held, `${100 * held}%`)
}

/** Nothing is written at rest: the page looks as it did before anything played. */
function place(element: HTMLElement, property: string, share: number, value: string): void {
  if (share > 0) element.style.setProperty(property, value)
  else element.removeAttribute('style')
}
