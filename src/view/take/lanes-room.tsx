import type { ReactNode } from 'react'
import { useChain, useView } from '../context/app-context'
import { useTextScale } from '../hooks/use-text-scale'
import { roomFor } from './lanes/lane-heights'
import { lanePlan } from './lanes/lane-plan'
import styles from './take.module.css'

/** As high as the lanes will be, so that nothing moves when they come; what is shown meanwhile stands in the middle. */
export function LanesRoom({ children }: { children?: ReactNode }) {
  const plan = lanePlan(
    useChain(({ chain }) => chain),
    null,
    useView((state) => state.spectrogram),
    useChain(({ chain, selectedId }) => chain.stages.find(({ id }) => id === selectedId)) ?? null,
  )
  const kinds = plan.map(({ kind }) => kind)
  return (
    <div className={styles.room} style={roomFor(kinds, useTextScale())}>
      {children}
    </div>
  )
}
