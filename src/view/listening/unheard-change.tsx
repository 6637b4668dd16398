import { useEffect, useState } from 'react'
import type { ChainDoc } from '../../core'
import { sideWords } from '../../state/kept-versions'
import { useBench, useListen } from '../bench-context'
import styles from './bar-notes.module.css'
import { isUnheard } from './unheard'

/** Long enough to be read and answered, ms. */
const STAY_MS = 10_000

/** Says when something was changed that is not in what is heard, and offers to hear it. */
export function UnheardChange() {
  const { chain, listening } = useBench()
  const heard = useListen((state) => state.heard)
  const scope = useListen((state) => state.scope)
  const [change, setChange] = useState<{ before: ChainDoc; now: ChainDoc } | null>(null)
  useEffect(
    () =>
      chain.subscribe((now, before) => {
        if (now.chain !== before.chain) setChange({ before: before.chain, now: now.chain })
      }),
    [chain],
  )
  useEffect(() => {
    if (!change) return
    const timer = setTimeout(() => setChange(null), STAY_MS)
    return () => clearTimeout(timer)
  }, [change])
  if (!change || !isUnheard(change.before, change.now, { heard, scope })) return null
  const sides = sideWords(scope)
  const what = heard === 'removed' ? 'the difference of what was kept' : `“${sides[heard]}”`
  return (
    <p className={styles.note}>
      You hear {what}: the change is not in it.
      {scope.kind === 'kept' ? (
        <button type="button" onClick={() => listening.setScope({ kind: 'chain' })}>
          compare the whole chain
        </button>
      ) : (
        <button type="button" onClick={() => listening.setSide('with')}>
          hear {sides.with}
        </button>
      )}
    </p>
  )
}
