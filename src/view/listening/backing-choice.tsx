import { useBench, useListen, useTake } from '../bench-context'
import { BackingSettings } from './backing-settings'
import { Choice } from './choice'
import styles from './listening.module.css'

const options = [
  { value: 'alone', label: 'alone' },
  { value: 'backing', label: 'with the backing' },
] as const

/** The voice alone or over its backing; there only when there is one. */
export function BackingChoice() {
  const { listening } = useBench()
  const hasBacking = useTake(({ backing }) => backing !== null)
  const backingOn = useListen((state) => state.backingOn)
  if (!hasBacking) return null
  return (
    <div className={styles.beside}>
      <Choice
        legend="Voice"
        value={backingOn ? 'backing' : 'alone'}
        options={options}
        onChange={(chosen) => listening.setBacking({ backingOn: chosen === 'backing' })}
      />
      <BackingSettings />
    </div>
  )
}
