import { sideWords } from '../../session/kept-versions'
import { useBench, useListen } from '../bench-context'
import { Choice } from './choice'
import styles from './side-switch.module.css'

/** The two sides of the comparison. Neither is heard while their difference is. */
export function SideSwitch() {
  const { listening } = useBench()
  const side = useListen(({ heard }) => (heard === 'removed' ? null : heard))
  const scope = useListen((state) => state.scope)
  const words = sideWords(scope)
  const sides = [
    { value: 'without', label: words.without },
    { value: 'with', label: words.with },
  ] as const
  return (
    <Choice
      legend="Side heard"
      keyHint="X"
      className={styles.sides}
      value={side}
      options={sides}
      onChange={(chosen) => listening.setSide(chosen)}
    />
  )
}
