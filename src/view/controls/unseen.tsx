import type { ReactNode } from 'react'
import styles from './unseen.module.css'

interface UnseenProps {
  readonly as?: 'legend' | 'span' | 'thead'
  readonly children: ReactNode
}

/** Text for screen readers that is not drawn. */
export function Unseen({ as: Element = 'span', children }: UnseenProps) {
  return <Element className={styles.unseen}>{children}</Element>
}
