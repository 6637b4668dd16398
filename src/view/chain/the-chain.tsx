import { useEffect, useRef } from 'react'
import { listeningPointIndexOf } from '../../core'
import { useApp, useChain, useEvidence, useListen } from '../context/app-context'
import { useScreen } from '../context/screen-context'
import { usePassingWords } from '../context/use-passing-words'
import { AddStage } from './add-stage'
import { Out, TakeIn } from './chain-ends'
import { ChainStage } from './chain-stage'
import { ListeningPoint } from './listening-point'
import { StageActions } from './stage-actions'
import styles from './the-chain.module.css'
import { useReorder } from './use-reorder'
import { VersionsMenu } from './versions-menu'

/** The chain as an ordered list, from the take to the output. */
export function TheChain() {
  const { listening } = useApp()
  const stages = useChain((state) => state.chain.stages)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const [announcement, announce] = usePassingWords()
  const said = useScreen((state) => state.said)
  useEffect(() => {
    if (said) announce(said.words)
  }, [said, announce])
  const reorder = useReorder(announce)
  const adder = useRef<HTMLButtonElement>(null)
  const selectedId = useChain((state) => state.selectedId)
  const selectedIndex = stages.findIndex(({ id }) => id === selectedId)
  const selected = stages[selectedIndex]
  const count = stages.length
  const measuring = useEvidence((state) => state.working !== null)
  const listeningPointIndex = listeningPointIndexOf(stages, listeningPoint)
  const listeningPointAtEnd = listeningPointIndex === count - 1
  return (
    <section className={styles.chain} aria-labelledby="the-chain">
      <div className={styles.head}>
        <h2 id="the-chain">Chain</h2>
        <p className={styles.said} aria-live="polite">
          {announcement}
        </p>
        {announcement === '' && <p className={styles.note}>what each stage does, in order</p>}
        {selected && (
          <StageActions
            stage={selected}
            index={selectedIndex}
            count={count}
            list={reorder.list}
            adder={adder}
            announce={announce}
          />
        )}
        <VersionsMenu announce={announce} />
        <AddStage opener={adder} onAdded={announce} />
      </div>
      <ol className={styles.list} ref={reorder.list} aria-busy={measuring}>
        <TakeIn />
        {stages.map((stage, index) => (
          <ChainStage
            key={stage.id}
            stage={stage}
            index={index}
            count={count}
            listeningPointIndex={listeningPointIndex}
            drop={reorder.dropOf(index)}
            onGrab={reorder.begin}
          />
        ))}
        {count === 0 && (
          <li className={styles.empty}>
            No stages: the take passes unchanged. Add a stage, or undo to restore the last ones.
          </li>
        )}
        <Out listeningPointAtEnd={listeningPointAtEnd}>
          <ListeningPoint
            here={listeningPointAtEnd}
            place="at the end of the chain"
            onPut={() => listening.setListeningPoint(null)}
          />
        </Out>
      </ol>
    </section>
  )
}
