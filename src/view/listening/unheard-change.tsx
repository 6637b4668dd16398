import { useEffect, useState } from 'react'
import type { ChainDoc, Scope } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import type { ListenState } from '../../session/listening/listen-store'
import { useApp, useListen } from '../context/app-context'
import styles from './listening.module.css'
import { isUnheard } from './unheard'

/** Long enough to be read and answered, ms. */
const STAY_MS = 10_000

interface Change {
  readonly before: ChainDoc
  readonly now: ChainDoc
  /** What was heard, and what was compared, when it was made. */
  readonly heard: ListenState['heard']
  readonly kind: Scope['kind']
}

/** Says when something was changed that is not in what is heard, and offers to hear it. */
export function UnheardChange() {
  const { chain, comparing, listen, listening } = useApp()
  const heard = useListen((state) => state.heard)
  const scope = useListen((state) => state.scope)
  const [change, setChange] = useState<Change | null>(null)
  useEffect(
    () =>
      chain.subscribe((now, before) => {
        if (now.chain === before.chain) return
        const { heard, scope } = listen.getState()
        setChange({ before: before.chain, now: now.chain, heard, kind: scope.kind })
      }),
    [chain, listen],
  )
  useEffect(() => {
    if (!change) return
    const timer = setTimeout(() => setChange(null), STAY_MS)
    return () => clearTimeout(timer)
  }, [change])
  // Whoever went to hear something else since knows that it is something else.
  if (!change || change.heard !== heard || change.kind !== scope.kind) return null
  if (!isUnheard(change.before, change.now, { heard, scope })) return null
  const sides = sideWords(scope)
  const what =
    heard === 'difference'
      ? `the difference between ${sides.bypassed} and ${sides.processed}`
      : `“${sides[heard]}”`
  return (
    <p className={styles.barNote}>
      You hear {what}, which does not include this change.
      {scope.kind === 'snapshots' ? (
        <button type="button" onClick={() => comparing.compare('chain')}>
          compare the whole chain
        </button>
      ) : (
        <button type="button" onClick={() => listening.setSide('processed')}>
          hear {sides.processed}
        </button>
      )}
    </p>
  )
}
