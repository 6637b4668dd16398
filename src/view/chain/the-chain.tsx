import { useEffect, useRef } from 'react'
import { listeningPointIndexOf } from '../../core'
import { otherChainWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen, useTake } from '../context/app-context'
import { useScreen } from '../context/screen-context'
import { usePassingWords } from '../context/use-passing-words'
import { useSize } from '../hooks/use-size'
import { useTextScale } from '../hooks/use-text-scale'
import { FailedPart } from '../lazy/failed-part'
import { type FailedViewProps, LazyView } from '../lazy/lazy-view'
import { AddStage } from './add-stage'
import { Out, TakeIn } from './chain-ends'
import { cardPlace, chainLayout } from './chain-layout'
import { ChainStage } from './chain-stage'
import { chainTools, listeningPoint as listeningPointPart } from './lazy-parts'
import styles from './the-chain.module.css'
import { useReorder } from './use-reorder'
import { useSelectedInSight } from './use-selected-in-sight'

/** What browsers take for the size of text unless told otherwise, CSS pixels. */
const REM_PX = 16

/** The chain as a signal path, from the take to the output. */
export function TheChain() {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const scope = useListen((state) => state.scope)
  const otherChain = useChain(({ chain }) => otherChainWords(scope, chain))
  const measuring = useEvidence((state) => state.working !== null)
  // The first take is there, or will not come.
  const isOpened = useTake(({ take, loading }) => take !== null || loading === null)
  const hasTake = useTake(({ take }) => take !== null)
  const [announcement, announce] = usePassingWords()
  const said = useScreen((state) => state.said)
  useEffect(() => {
    if (said) announce(said.words)
  }, [said, announce])
  const reorder = useReorder(announce)
  const adder = useRef<HTMLButtonElement>(null)
  const [section, { width }] = useSize<HTMLElement>()
  const count = stages.length
  const layout = chainLayout(count, width / (REM_PX * useTextScale()))
  useSelectedInSight(reorder.list, selectedId, layout.form === 'row')
  const listeningPointIndex = listeningPointIndexOf(stages, listeningPoint)
  return (
    <section className={styles.chain} aria-labelledby="the-chain" ref={section}>
      <div className={styles.head}>
        <h2 id="the-chain">Chain</h2>
        {announcement === '' && count > 1 && <p className={styles.note}>drag to reorder</p>}
        <p className={styles.said} aria-live="polite">
          {announcement}
        </p>
        {/* What comes behind it comes late, and moves nothing. */}
        <span className={styles.space} />
        {isOpened && (
          <LazyView part={chainTools} props={{ list: reorder.list, adder, announce }} failed={FailedPart} />
        )}
        <AddStage opener={adder} onAdded={announce} />
      </div>
      <ol
        className={styles.list}
        ref={reorder.list}
        data-form={layout.form}
        style={{ '--columns': layout.columns }}
        aria-busy={measuring}
      >
        <TakeIn />
        {stages.map((stage, index) => (
          <ChainStage
            key={stage.id}
            stage={stage}
            index={index}
            isLast={index === count - 1}
            {...cardPlace(index, count, layout)}
            compact={layout.form === 'compact'}
            heard={index <= listeningPointIndex}
            measured={otherChain === null}
            drop={reorder.dropOf(index)}
            onGrab={reorder.begin}
          />
        ))}
        {count === 0 && (
          <li className={styles.empty}>No stages: the take passes unchanged. Add one, or undo.</li>
        )}
        <Out
          column={count === 0 ? 1 : cardPlace(count - 1, count, layout).column + 1}
          line={count === 0 ? 0 : cardPlace(count - 1, count, layout).line}
          otherChain={otherChain}
          listeningPointAtEnd={listeningPointIndex === count - 1}
        />
        {hasTake && count > 0 && (
          <LazyView
            part={listeningPointPart}
            props={{
              stages,
              index: listeningPointIndex,
              ...cardPlace(listeningPointIndex, count, layout),
              list: reorder.list,
            }}
            failed={FailedListeningPoint}
          />
        )}
      </ol>
    </section>
  )
}

function FailedListeningPoint(props: FailedViewProps) {
  return (
    <li>
      <FailedPart {...props} />
    </li>
  )
}
