import { useEffect, useState } from 'react'
import { useApp, useTake } from '../context/app-context'
import { Unseen } from '../controls/unseen'
import styles from './notices.module.css'
import { type Opened, takeNews } from './take-news'
import { timingWords } from './timing-words'

/** What the note is about. */
interface Note {
  /** What was open when the take came in; null where only the backing is new. */
  readonly before: Opened | null
  readonly looped: boolean
}

/**
 * Says what was kept and what was removed when a take replaced another, and where a file may sit late; what the demo
 * replaced can be brought back. It stands above the take until it is closed, so that it covers nothing, and nothing
 * moves by itself. What changes meanwhile changes in it.
 */
export function ReplacedTake() {
  const { take: store, listen, takes } = useApp()
  const canComeBack = useTake(({ replaced }) => replaced !== null)
  const take = useTake((state) => state.take)
  const backing = useTake((state) => state.backing)
  const [note, setNote] = useState<Note | null>(null)
  useEffect(
    () =>
      store.subscribe((now, before) => {
        // Told before the loop is cleared.
        if (now.take?.sound !== before.take?.sound)
          setNote({ before, looped: listen.getState().loop !== null })
        else if (now.backing !== before.backing && now.backing?.timing)
          setNote((shown) => shown ?? { before: null, looped: false })
      }),
    [store, listen],
  )
  const replaced = note?.before ? takeNews(note.before, { take, backing }, note.looped) : null
  const news = note && [replaced, timingWords(take), timingWords(backing)].filter(Boolean).join(' ')
  const discard = () => {
    takes.forgetReplaced()
    setNote(null)
  }
  return (
    <div role="status" className={styles.status}>
      {news && (
        <div className={styles.news}>
          <p>
            {take && (
              <Unseen>
                <bdi>{take.name}</bdi>:{' '}
              </Unseen>
            )}
            {news}
          </p>
          <span className={styles.answers}>
            {canComeBack && (
              <button type="button" onClick={() => void takes.bringBack()}>
                Restore it
              </button>
            )}
            <button type="button" aria-label={canComeBack ? undefined : 'Close the note'} onClick={discard}>
              {canComeBack ? 'Discard it' : 'Close'}
            </button>
          </span>
        </div>
      )}
    </div>
  )
}
