import { useState } from 'react'
import { useBench, useChain, useListen } from '../bench-context'
import { AddStage } from './add-stage'
import { Ear } from './ear'
import { KeptMenu } from './kept-menu'
import { Out, TakeIn } from './path-ends'
import { PathStage } from './path-stage'
import styles from './the-path.module.css'
import { useReorder } from './use-reorder'

/** The chain as an ordered list, from the take to the way out. */
export function ThePath() {
  const { listening } = useBench()
  const stages = useChain((state) => state.chain.stages)
  const earAfterId = useListen((state) => state.earAfterId)
  const [announcement, announce] = useState('')
  const reorder = useReorder(announce)
  const last = stages.length - 1
  const found = stages.findIndex(({ id }) => id === earAfterId)
  // Behind the last stage, or behind one that is no longer there, is the end.
  const earIndex = found < 0 ? last : found
  return (
    <section className={styles.path} aria-labelledby="the-path">
      <div className={styles.head}>
        <h2 id="the-path">The path</h2>
        <p className={styles.note}>What each stage does, and what it changes</p>
        <KeptMenu announce={announce} />
        <AddStage onAdded={announce} />
      </div>
      <ol className={styles.list} ref={reorder.list}>
        <TakeIn />
        {stages.map((stage, index) => (
          <PathStage
            key={stage.id}
            stage={stage}
            index={index}
            count={stages.length}
            earIndex={earIndex}
            reorder={reorder}
            announce={announce}
          />
        ))}
        <Out earAtEnd={earIndex === last}>
          <Ear
            here={earIndex === last}
            label="Hear the sound at the end of the chain"
            onPut={() => listening.setEar(null)}
          />
        </Out>
      </ol>
      <p className={styles.live} aria-live="polite">
        {announcement}
      </p>
    </section>
  )
}
