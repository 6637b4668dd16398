import styles from './side-legend.module.css'

interface SideLegendProps {
  readonly sides: { readonly bypassed: string; readonly processed: string }
}

/** How the two sides are drawn: a sample of each line beside its name. Pictures say it in their own sentences. */
export function SideLegend({ sides }: SideLegendProps) {
  return (
    <span className={styles.legend}>
      <span className={styles.entry}>
        <Sample className={styles.bypassed} /> {sides.bypassed}
      </span>{' '}
      <span className={styles.entry}>
        <Sample className={styles.processed} /> {sides.processed}
      </span>
    </span>
  )
}

function Sample({ className }: { className: string | undefined }) {
  return (
    <svg className={className} viewBox="0 0 22 8" aria-hidden="true">
      <path d="M0,4H22" />
    </svg>
  )
}
