import type { MouseEvent } from 'react'
import { setBand, switchStage } from '../../session/chain/chain-edits'
import { useApp, useChain, useListen } from '../context/app-context'
import { alike, type Remedy } from './alike'
import styles from './listening.module.css'

const remedyWords: Readonly<Record<Remedy['kind'], string>> = {
  'hear-up-to': 'hear up to it',
  'hear-to-end': 'hear the whole chain',
  'stage-on': 'switch it on',
  'band-on': 'switch it on',
}

/** Says why both sides must be alike, and offers the one change that helps, if there is one. */
export function NothingToCompare() {
  const { chain, listening } = useApp()
  const doc = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const found = alike(doc, scope, listeningPoint)
  if (!found) return null
  const { words, remedy } = found
  const carryOut = (chosen: Remedy) => {
    switch (chosen.kind) {
      case 'hear-up-to':
        listening.setListeningPoint(chosen.stageId)
        return
      case 'hear-to-end':
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
    if (!remedy) return
    // The button goes with what it remedies: the focus stays in the bar.
    event.currentTarget.closest('section')?.focus()
    carryOut(remedy)
  }
  return (
    <p className={styles.barNote}>
      Nothing to compare: {words}.
      {remedy && (
        <button type="button" onClick={press}>
          {remedyWords[remedy.kind]}
        </button>
      )}
    </p>
  )
}
