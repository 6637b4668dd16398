import { useEffect, useState } from 'react'
import { useBench, useTake } from '../bench-context'
import unseen from '../unseen.module.css'
import styles from './notices.module.css'
import { takeNews } from './take-news'

/**
 * Says what stayed and what went when a take came in the place of another; what the demo replaced can be brought back.
 * It stands above the take until it is closed, so that it covers nothing, and nothing moves by itself.
 */
export function ReplacedTake() {
  const { take, listen, takes } = useBench()
  const canComeBack = useTake(({ replaced }) => replaced !== null)
  const name = useTake((state) => state.take?.name ?? '')
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
  const letGo = () => {
    takes.forgetReplaced()
    setNews(null)
  }
  return (
    <div role="status" className={styles.status}>
      {news !== null && (
        <div className={styles.news}>
          <p>
            <span className={unseen.unseen}>{name}: </span>
            {news}
          </p>
          <span className={styles.answers}>
            {canComeBack && (
              <button type="button" onClick={() => void takes.bringBack()}>
                Bring it back
              </button>
            )}
            <button type="button" aria-label={canComeBack ? undefined : 'Close the note'} onClick={letGo}>
              {canComeBack ? 'Let it go' : 'Close'}
            </button>
          </span>
        </div>
      )}
    </div>
  )
}
