import { sideWords } from '../../state/kept-versions'
import { useBench, useListen } from '../bench-context'
import { Choice } from './choice'
import styles from './listening.module.css'

/** The two sides of the comparison. */
export function SideSwitch() {
  const { listening } = useBench()
  const side = useListen((state) => state.side)
  const scope = useListen((state) => state.scope)
  const words = sideWords(scope)
  const sides = [
    { value: 'without', label: words.without },
    { value: 'with', label: words.with },
  ] as const
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
