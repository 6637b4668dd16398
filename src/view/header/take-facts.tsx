import { useMemo } from 'react'
import { deliveredMeasures } from '../../session/delivered-measures'
import { goToFirstClip } from '../../session/take/go-to'
import { useApp, useChain, useEvidence, useTake } from '../context/app-context'
import { useScreenStore } from '../context/screen-context'
import { type Fact, measureFacts, outputFact, takeFacts } from './facts'
import styles from './header.module.css'

/** The take in one line, and what of it or of the output has to be looked into. Its line is there before its figures. */
export function TakeFacts() {
  const app = useApp()
  const screen = useScreenStore()
  const take = useTake((state) => state.take)
  const peakDbtp = useOutputPeak()
  const facts = useMemo(() => (take ? factsOf(take) : []), [take])
  const output = outputFact(peakDbtp)
  return (
    <ul className={styles.facts} aria-label="The unprocessed take">
      {facts.map(({ words, title, worth, hasPlace }) => (
        <li key={title} title={title} data-worth={worth}>
          {hasPlace ? (
            <button
              type="button"
              data-look="link"
              title={`${title}. Goes to the first.`}
              onClick={() => goToFirstClip(app)}
            >
              {words}
            </button>
          ) : (
            words
          )}
        </li>
      ))}
      {output && (
        <li data-worth>
          <button
            type="button"
            data-look="link"
            title={`${output.title}. Deliver tells what to do.`}
            onClick={() => screen.setState({ sheet: 'deliver' })}
          >
            {output.words}
          </button>
        </li>
      )}
    </ul>
  )
}

function factsOf(take: NonNullable<Parameters<typeof takeFacts>[0]>): readonly Fact[] {
  const { measures, replacedSamples } = take
  const replaced: readonly Fact[] =
    replacedSamples > 0
      ? [
          {
            words: `${replacedSamples} invalid samples silenced`,
            title: 'Samples that were no numbers (NaN or infinite)',
            worth: true,
          },
        ]
      : []
  return [...takeFacts(take), ...(measures ? measureFacts(measures) : []), ...replaced]
}

/** True peak of the whole current chain, dBTP; null where that is not measured just now. */
function useOutputPeak(): number | null {
  const chain = useChain((state) => state.chain)
  return useEvidence(({ evidence }) => deliveredMeasures(evidence, chain)?.truePeakDbtp ?? null)
}
