import { useEffect, useState } from 'react'
import { useBench, useTake } from '../bench-context'
import styles from './notices.module.css'
import { takeNews } from './take-news'

/** Long enough to be read or spoken, ms. */
const STAY_MS = 20_000

/** Says what stayed and what went when a take came in the place of another; what the demo replaced can be brought back. */
export function ReplacedTake() {
  const { take, listen, takes } = useBench()
  const canComeBack = useTake(({ replaced }) => replaced !== null)
  const [news, setNews] = useState<string | null>(null)
  useEffect(
    () =>
      take.subscribe((now, before) => {
        if (now.take?.sound === before.take?.sound) return
        // Told before the loop is taken away.
        setNews(takeNews(before, now, listen.getState().loop !== null))
      }),
    [take, listen],
  )
  // What can be brought back is offered for as long as it can.
  useEffect(() => {
    if (news === null || canComeBack) return
    const timer = setTimeout(() => setNews(null), STAY_MS)
    return () => clearTimeout(timer)
  }, [news, canComeBack])
  const letGo = () => {
    takes.forgetReplaced()
    setNews(null)
  }
  return (
    <div role="status">
      {news !== null && (
        <div className={styles.news}>
          <p>{news}</p>
          <span className={styles.answers}>
            {canComeBack && (
              <button type="button" onClick={() => void takes.bringBack()}>
                Bring it back
              </button>
            )}
            <button type="button" onClick={letGo}>
              {canComeBack ? 'Let it go' : 'Close the note'}
            </button>
          </span>
        </div>
      )}
    </div>
  )
}
