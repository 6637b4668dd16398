import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useFirstTakeSettled } from '../context/use-first-take-settled'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import styles from './the-response.module.css'

/** What draws the response: it comes with the first take, so that the page starts sooner. */
export const responsePlot: LazyPart<ComponentType> = lazyPart(
  'The response',
  async () => (await import('./response-plot')).ResponsePlot,
)

/** The magnitude response of everything linear in the chain, over the spectrum of the take. */
export function TheResponse() {
  const isDrawn = useFirstTakeSettled()
  return (
    <section className={styles.response} aria-labelledby="the-response">
      <h2 id="the-response">Response</h2>
      {isDrawn && <LazyView part={responsePlot} props={{}} failed={FailedPart} />}
    </section>
  )
}
