import { sideWords } from '../../session/comparison/side-words'
import { useListen } from '../context/app-context'
import styles from './take-legend.module.css'

/** Which wave is which: that which is heard as ink, the other as a ghost. */
export function TakeLegend() {
  const heard = useListen((state) => state.side)
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  return (
    <p className={styles.legend}>
      {(['bypassed', 'processed'] as const).map((side) => (
        <span key={side} title={side === heard ? 'heard' : undefined}>
          <i className={side === heard ? styles.ink : styles.ghost} />
          {sides[side]}
        </span>
      ))}
      {scope.kind === 'snapshots' && <span>{`lanes: ${sides.processed}`}</span>}
    </p>
  )
}
