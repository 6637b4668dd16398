import { useBench, useListen } from '../bench-context'
import { Choice } from './choice'
import styles from './listening.module.css'

const sides = [
  { value: 'without', label: 'without' },
  { value: 'with', label: 'with' },
] as const

/** The two sides of the comparison. */
export function SideSwitch() {
  const { listening } = useBench()
  const side = useListen((state) => state.side)
  return (
    <Choice
      legend="Side heard"
      className={styles.sides}
      value={side}
      options={sides}
      onChange={(chosen) => listening.setSide(chosen)}
    />
  )
}
