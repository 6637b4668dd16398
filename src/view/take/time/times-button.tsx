import { useListen } from '../../context/app-context'
import { printExactTime } from '../../words/time-text'
import styles from './times-button.module.css'

interface TimesButtonProps {
  readonly sampleRate: number
  readonly isOpen: boolean
  /** The id of what it opens. */
  readonly controls: string
  onPress(): void
}

/** Opens what is rarely typed; says where the loop is. */
export function TimesButton({ sampleRate, isOpen, controls, onPress }: TimesButtonProps) {
  const loop = useListen((state) => state.loop)
  const time = (frame: number) => printExactTime(frame / sampleRate)
  return (
    <button
      type="button"
      data-look="bare"
      title="Position and loop, typed"
      aria-expanded={isOpen}
      aria-controls={isOpen ? controls : undefined}
      onClick={onPress}
    >
      {loop ? (
        <>
          <span className={styles.loop}>Loop </span>
          {`${time(loop.from)} – ${time(loop.to)}`}
        </>
      ) : (
        'Times'
      )}
      <span aria-hidden="true"> {isOpen ? '▴' : '▾'}</span>
    </button>
  )
}
