import type { ReactNode } from 'react'
import { plain } from '../../core'
import { snapshotWords } from '../../session/chain/snapshots'
import { stagesOfWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen, useTake } from '../context/app-context'
import { usePendingWords } from '../context/use-pending-words'
import styles from './chain-ends.module.css'

/** Where the chain begins: the unprocessed take. */
export function TakeIn() {
  const pending = usePendingWords()
  const none = useTake((state) => state.take === null && state.loading === null)
  const lufs = useTake((state) => state.take?.measures?.integratedLufs)
  return (
    <li className={styles.end}>
      <span className={styles.name}>take</span>
      <span>{none ? 'none yet' : loudness(lufs, pending)}</span>
    </li>
  )
}

interface OutProps {
  readonly listeningPointAtEnd: boolean
  /** The listening point at the end. */
  readonly children: ReactNode
}

/** Where the chain ends, and the figures at the listening point. */
export function Out({ listeningPointAtEnd, children }: OutProps) {
  const pending = usePendingWords()
  const hasTake = useTake((state) => state.take !== null)
  const scope = useListen((state) => state.scope)
  const ofStored = useChain(({ chain }) => stagesOfWords(scope, chain) !== null)
  const measures = useEvidence((state) => state.evidence?.processed.measures)
  return (
    <li className={styles.end}>
      <span className={styles.name}>
        {listeningPointAtEnd ? `out: ${ofStored ? snapshotWords.b : 'whole chain'}` : 'out'}
      </span>
      {!listeningPointAtEnd && <span>{ofStored && `${snapshotWords.b} `}at the listening point:</span>}
      <span>{hasTake && loudness(measures?.integratedLufs, pending)}</span>
      <span>{measures ? level(measures.truePeakDbtp) : ''}</span>
      {children}
    </li>
  )
}

function loudness(lufs: number | null | undefined, pending: string): string {
  if (lufs === undefined) return pending
  return lufs === null ? 'too quiet to measure' : `${plain(lufs, 1)} LUFS`
}

function level(dbtp: number | null): string {
  return dbtp === null ? 'silent' : `${plain(dbtp, 1)} dBTP`
}
