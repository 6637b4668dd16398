import { sideWords } from '../../session/comparison/side-words'
import { printedKey } from '../actions/key-table'
import { useApp, useListen } from '../context/app-context'
import { Choice } from '../controls/choice'
import styles from './side-switch.module.css'

/** The two sides of the comparison. Neither is heard while their difference is. */
export function SideSwitch() {
  const { listening } = useApp()
  const side = useListen(({ heard }) => (heard === 'difference' ? null : heard))
  const scope = useListen((state) => state.scope)
  const words = sideWords(scope)
  const sides = [
    { value: 'bypassed', label: words.bypassed },
    { value: 'processed', label: words.processed },
  ] as const
  return (
    <div className={styles.switch}>
      <Choice
        legend="Side heard"
        keyHint={printedKey('side')}
        className={styles.sides}
        value={side}
        options={sides}
        onChange={(chosen) => listening.setSide(chosen)}
      />
      <span className={styles.key} aria-hidden="true">
        {printedKey('side')}
      </span>
    </div>
  )
}
