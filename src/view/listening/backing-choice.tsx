import { useApp, useListen, useTake } from '../app-context'
import { BackingSettings } from './backing-settings'
import { Choice } from './choice'
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
        keyHint="B"
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
