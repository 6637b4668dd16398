import styles from './side-legend.module.css'

interface SideLegendProps {
  readonly sides: { readonly bypassed: string; readonly processed: string }
}

/** How the two sides are drawn: a sample of each line beside its name. */
export function SideLegend({ sides }: SideLegendProps) {
  return (
    <span className={styles.legend}>
      <span className={styles.entry}>
        <Sample className={styles.bypassed} words="dashed" /> {sides.bypassed}
      </span>{' '}
      <span className={styles.entry}>
        <Sample className={styles.processed} words="solid" /> {sides.processed}
      </span>
    </span>
  )
}

function Sample({ className, words }: { className: string | undefined; words: string }) {
  return (
    <svg className={className} viewBox="0 0 22 8" role="img" aria-label={words}>
      <path d="M0,4H22" />
    </svg>
  )
}
