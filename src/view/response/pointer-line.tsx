import { useStore } from 'zustand'
import type { Plot } from './plot'
import { type PointedStore, pointedHz } from './pointed-store'
import styles from './pointer-line.module.css'

/** Marks the frequency that is read. */
export function PointerLine({ pointed, plot }: { pointed: PointedStore; plot: Plot }) {
  const hz = useStore(pointed, pointedHz)
  const [bottom = 0, top = 0] = plot.y.range()
  return hz === null ? null : <path className={styles.line} d={`M${plot.x(hz)},${top}V${bottom}`} />
}
