import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useFirstTakeSettled } from '../context/use-first-take-settled'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import styles from './the-figures.module.css'

/** What draws the figures: there are none before there is a take. */
export const figuresTable: LazyPart<ComponentType> = lazyPart(
  'The table of figures',
  async () => (await import('./figures-table')).FiguresTable,
)

/** The figures without, with, and the change. */
export function TheFigures() {
  const isDrawn = useFirstTakeSettled()
  return (
    <section className={styles.figures} aria-labelledby="the-figures">
      <h2 id="the-figures">Figures</h2>
      {isDrawn && <LazyView part={figuresTable} props={{}} failed={FailedPart} />}
    </section>
  )
}
