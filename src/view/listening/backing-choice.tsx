import { printedKey } from '../actions/key-table'
import { useApp, useListen, useTake } from '../context/app-context'
import { Choice } from '../controls/choice'
import { BackingSettings } from './backing-settings'
import styles from './listening.module.css'

/** The voice alone or, when there is one, over its backing. */
export function BackingChoice() {
  const { listening } = useApp()
  const hasBacking = useTake(({ backing }) => backing !== null)
  const backingOn = useListen((state) => state.backingOn)
  return (
    <div className={styles.beside}>
      <Choice
        legend="Voice"
        keyHint={printedKey('backing')}
        value={backingOn && hasBacking ? 'backing' : 'alone'}
        options={[
          { value: 'alone', label: 'alone' },
          { value: 'backing', label: 'with the backing', disabled: !hasBacking },
        ]}
        onChange={(chosen) => listening.setBacking({ backingOn: chosen === 'backing' })}
      />
      {hasBacking && <BackingSettings />}
    </div>
  )
}
