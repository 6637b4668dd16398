import { useApp } from '../context/app-context'
import styles from './hear-up-to-here.module.css'

interface HearUpToHereProps {
  /** The stage before. */
  readonly stageId: string
  /** Where this is, as it follows a comma. */
  readonly place: string
}

/** The line behind a stage: a press on it puts the listening point there. Keys move the point itself. */
export function HearUpToHere({ stageId, place }: HearUpToHereProps) {
  const { listening } = useApp()
  const words = `Hear up to here, ${place}`
  return (
    <button
      type="button"
      tabIndex={-1}
      className={styles.gap}
      aria-label={words}
      title={words}
      onClick={() => listening.setListeningPoint(stageId)}
    />
  )
}
