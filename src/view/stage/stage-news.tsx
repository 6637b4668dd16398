import styles from './stage-news.module.css'

interface StageNewsProps {
  readonly news: string
  /** Whether a picture stands beside the settings. */
  readonly beside: boolean
}

/** What was just done with all settings of a stage, or why it was not: spoken, and shown at the buttons that do it. */
export function StageNews({ news, beside }: StageNewsProps) {
  return (
    <p className={styles.news} data-beside={beside} aria-live="polite">
      {news}
    </p>
  )
}
