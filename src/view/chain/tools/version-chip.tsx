import { memo } from 'react'
import {
  type SnapshotKey,
  snapshotLetters,
  snapshotWords,
  storeSnapshot,
} from '../../../session/chain/snapshots'
import { snapshotScope } from '../../../session/comparison/scope-after'
import { sideWords } from '../../../session/comparison/side-words'
import { useApp, useChain, useListen } from '../../context/app-context'
import styles from './version-chip.module.css'
import { VersionMenu } from './version-menu'

interface VersionChipProps {
  /** Which of the stored versions. */
  readonly of: SnapshotKey
  announce(text: string): void
}

/** A version of the chain: a press on an empty one stores it, a press on a stored one compares it and plays its side. */
export const VersionChip = memo(({ of: key, announce }: VersionChipProps) => {
  const { chain, comparing, listening } = useApp()
  const snapshots = useChain((state) => state.snapshots)
  const isCompared = useListen(({ scope }) => scope.kind === 'snapshots')
  const letter = snapshotLetters[key]
  const stored = snapshots[key]
  const { bypassed, processed } = sideWords(snapshotScope(snapshots))
  const press = () => {
    if (!stored) {
      chain.getState().editVersions(storeSnapshot(key))
      announce(`Stored as ${letter}`)
      return
    }
    comparing.compare('snapshots')
    listening.setSide(key === 'a' ? 'bypassed' : 'processed')
    announce(`${bypassed} against ${processed}`)
  }
  return (
    <span className={styles.chip} data-stored={stored !== null} data-compared={stored !== null && isCompared}>
      <button
        type="button"
        className={styles.press}
        data-look="bare"
        aria-pressed={stored ? isCompared : undefined}
        title={
          stored
            ? `Compare ${bypassed} with ${processed}, and hear ${snapshotWords(key, stored)}`
            : `Store the chain as ${letter}, to compare it later`
        }
        onClick={press}
      >
        {letter} {stored ? <bdi className={styles.name}>{stored.name}</bdi> : <i>empty</i>}
      </button>
      {stored && <VersionMenu of={key} stored={stored} announce={announce} />}
    </span>
  )
})
