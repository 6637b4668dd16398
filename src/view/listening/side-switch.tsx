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
  const sides = (['bypassed', 'processed'] as const).map((value) => ({
    value,
    label: words[value],
    title: words[value],
  }))
  return (
    <Choice
      legend="Side heard"
      keyHint={printedKey('side')}
      className={styles.sides}
      value={side}
      options={sides}
      onChange={(chosen) => listening.setSide(chosen)}
    />
  )
}
