import type { ComponentType } from 'react'
import type { Sound } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useListen, useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import { SideLegend } from '../plot/side-legend'
import { EmptyLanes } from './empty-lanes'
import { NoTake } from './no-take'
import styles from './take.module.css'
import { WorkingNote } from './working-note'

/** The pictures of a take and what moves along them: nobody needs them before there is one. */
export const takeLanes: LazyPart<ComponentType<{ readonly sound: Sound }>> = lazyPart(
  'The picture of the take',
  async () => (await import('./take-lanes')).TakeLanes,
)

/** The take along time, with its name and what is being done to it. */
export function TheTake() {
  const sound = useTake(({ take }) => take?.sound ?? null)
  const hasNone = useTake(({ take, loading }) => take === null && loading === null)
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  return (
    <section className={styles.take} aria-labelledby="the-take">
      <div className={styles.head}>
        <h2 id="the-take">Take</h2>
        <p className={scope.kind === 'snapshots' ? styles.longRule : styles.rule}>
          <SideLegend sides={sides} />
          {scope.kind === 'snapshots' && ` lanes: ${sides.processed}`}
        </p>
        <WorkingNote />
      </div>
      {hasNone && <NoTake />}
      {sound ? (
        <LazyView part={takeLanes} props={{ sound }} failed={FailedPart} meanwhile={<WithoutLanes />} />
      ) : (
        <WithoutLanes isEmpty={hasNone} />
      )}
    </section>
  )
}

/** What keeps the room of the lanes, and of the row beneath them. */
function WithoutLanes({ isEmpty = false }: { isEmpty?: boolean }) {
  return (
    <>
      {!isEmpty && <EmptyLanes />}
      <div className={styles.row} />
    </>
  )
}
