import { stageDefinitions } from '../../core'
import { useBench, useChain, useListen } from '../bench-context'
import { earIndexOf } from '../path/ear-place'
import styles from './bar-notes.module.css'

/** Says where both sides must be alike, because what is compared stands after the ear, and offers to move the ear. */
export function NothingToCompare() {
  const { listening } = useBench()
  const stages = useChain((state) => state.chain.stages)
  const comparedId = useListen(({ scope }) => ('stageId' in scope ? scope.stageId : null))
  const earAfterId = useListen((state) => state.earAfterId)
  const index = stages.findIndex(({ id }) => id === comparedId)
  const stage = stages[index]
  if (!stage || index <= earIndexOf(stages, earAfterId)) return null
  return (
    <p className={styles.note}>
      Nothing to compare: {index + 1} {stageDefinitions[stage.kind].label} stands after the ear.
      <button type="button" onClick={() => listening.setEar(stage.id)}>
        put the ear after it
      </button>
    </p>
  )
}
