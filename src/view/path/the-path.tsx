import { useEffect, useRef } from 'react'
import { useBench, useChain, useEvidence, useListen } from '../bench-context'
import { usePassingWords } from '../notices/use-passing-words'
import { useScreen } from '../screen-context'
import { AddStage } from './add-stage'
import { Ear } from './ear'
import { earIndexOf } from './ear-place'
import { KeptMenu } from './kept-menu'
import { Out, TakeIn } from './path-ends'
import { PathStage } from './path-stage'
import { StageActions } from './stage-actions'
import styles from './the-path.module.css'
import { useReorder } from './use-reorder'

/** The chain as an ordered list, from the take to the way out. */
export function ThePath() {
  const { listening } = useBench()
  const stages = useChain((state) => state.chain.stages)
  const earAfterId = useListen((state) => state.earAfterId)
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
  const earIndex = earIndexOf(stages, earAfterId)
  const earAtEnd = earIndex === count - 1
  return (
    <section className={styles.path} aria-labelledby="the-path">
      <div className={styles.head}>
        <h2 id="the-path">The path</h2>
        <p className={styles.said} aria-live="polite">
          {announcement}
        </p>
        {announcement === '' && <p className={styles.note}>what each stage does, in this order</p>}
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
        <KeptMenu announce={announce} />
        <AddStage opener={adder} onAdded={announce} />
      </div>
      <ol className={styles.list} ref={reorder.list} aria-busy={measuring}>
        <TakeIn />
        {stages.map((stage, index) => (
          <PathStage
            key={stage.id}
            stage={stage}
            index={index}
            count={count}
            earIndex={earIndex}
            drop={reorder.dropOf(index)}
            onGrab={reorder.begin}
          />
        ))}
        {count === 0 && (
          <li className={styles.empty}>
            No stages: the take leaves as it came. Add a stage to begin, or undo to have the last ones back.
          </li>
        )}
        <Out earAtEnd={earAtEnd}>
          <Ear here={earAtEnd} place="at the end of the chain" onPut={() => listening.setEar(null)} />
        </Out>
      </ol>
    </section>
  )
}
