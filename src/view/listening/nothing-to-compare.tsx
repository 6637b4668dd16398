import type { MouseEvent } from 'react'
import { setBand, switchStage } from '../../session/chain/chain-edits'
import { useApp, useChain, useListen } from '../context/app-context'
import { alike, type Mend } from './alike'
import styles from './listening.module.css'

const mendWords: Readonly<Record<Mend['kind'], string>> = {
  'ear-after': 'put the ear after it',
  'ear-to-end': 'put the ear at the end',
  'stage-on': 'switch it on',
  'band-on': 'switch it on',
}

/** Says where both sides must be alike, and offers to mend it where one thing does. */
export function NothingToCompare() {
  const { chain, listening } = useApp()
  const doc = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const found = alike(doc, scope, listeningPoint)
  if (!found) return null
  const { words, mend } = found
  const carryOut = (chosen: Mend) => {
    switch (chosen.kind) {
      case 'ear-after':
        listening.setListeningPoint(chosen.stageId)
        return
      case 'ear-to-end':
        listening.setListeningPoint(null)
        return
      case 'stage-on':
        chain.getState().edit(switchStage(chosen.stageId, true))
        return
      case 'band-on':
        chain.getState().edit(setBand(chosen.stageId, chosen.bandIndex, { on: true }))
        return
    }
  }
  const press = (event: MouseEvent<HTMLButtonElement>) => {
    if (!mend) return
    // The button goes with what it mends: the focus stays in the bar.
    event.currentTarget.closest('section')?.focus()
    carryOut(mend)
  }
  return (
    <p className={styles.barNote}>
      Nothing to compare: {words}.
      {mend && (
        <button type="button" onClick={press}>
          {mendWords[mend.kind]}
        </button>
      )}
    </p>
  )
}
