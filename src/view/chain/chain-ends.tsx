import { useTake } from '../context/app-context'
import { LazyView } from '../lazy/lazy-view'
import styles from './chain-ends.module.css'
import type { EndFiguresProps } from './figures/end-figures'
import { endFigures } from './lazy-parts'
import { NoFigures } from './no-figures'

/** Where the chain begins: the unprocessed take. */
export function TakeIn() {
  return (
    <li className={styles.take}>
      <span className={styles.name}>take</span>
      <Figures of="take" />
    </li>
  )
}

interface OutProps {
  /** Where it stands, from 0. */
  readonly column: number
  readonly line: number
  /** The name of the version whose figures these are, where that is not the chain that is shown. */
  readonly otherChain: string | null
  readonly listeningPointAtEnd: boolean
}

/** Where the chain ends, and what is measured there, while it is heard up to there. */
export function Out({ column, line, otherChain, listeningPointAtEnd }: OutProps) {
  return (
    <li
      className={styles.out}
      style={{ gridColumn: column + 2, gridRow: line + 1 }}
      data-unheard={!listeningPointAtEnd}
    >
      <span className={styles.name}>out{otherChain && ` of ${otherChain}`}</span>
      {listeningPointAtEnd ? <Figures of="out" /> : <span className={styles.figures}>not heard</span>}
    </li>
  )
}

function Figures({ of }: EndFiguresProps) {
  const hasTake = useTake(({ take }) => take !== null)
  return (
    <span className={styles.figures}>
      {hasTake && <LazyView part={endFigures} props={{ of }} failed={NoFigures} />}
    </span>
  )
}
