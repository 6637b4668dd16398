import type { ComponentType } from 'react'
import type { Sound } from '../../core'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { type FailedViewProps, LazyView } from '../lazy/lazy-view'
import { LanesRoom } from './lanes-room'
import { NoTake } from './no-take'
import styles from './take.module.css'
import { TakeLegend } from './take-legend'
import { WorkingNote } from './working-note'

/** The pictures of a take and what moves along them: nobody needs them before there is one. */
export const takeLanes: LazyPart<ComponentType<{ readonly sound: Sound }>> = lazyPart(
  'The picture of the take',
  async () => (await import('./take-lanes')).TakeLanes,
)

/** The take along time, with what is being done to it. */
export function TheTake() {
  const sound = useTake(({ take }) => take?.sound ?? null)
  const hasNone = useTake(({ take, loading }) => take === null && loading === null)
  return (
    <section className={styles.take} aria-labelledby="the-take">
      <div className={styles.head}>
        <h2 id="the-take">Take</h2>
        {sound && <TakeLegend />}
        {sound && <WorkingNote />}
      </div>
      {sound ? (
        <LazyView part={takeLanes} props={{ sound }} failed={FailedLanes} meanwhile={<LanesRoom />} />
      ) : (
        <LanesRoom>{hasNone ? <NoTake /> : <WorkingNote />}</LanesRoom>
      )}
    </section>
  )
}

function FailedLanes(props: FailedViewProps) {
  return (
    <LanesRoom>
      <FailedPart {...props} />
    </LanesRoom>
  )
}
