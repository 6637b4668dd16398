import type { SibilanceDetection } from '../../../core'
import { useGainReduction } from '../../context/use-gain-reduction'
import styles from './pictures.module.css'
import { levelMet } from './sibilance-level'

interface SibilanceNowProps {
  readonly detection: SibilanceDetection
  readonly index: number
  /** Horizontal position of the dot. */
  readonly x: number
  y(levelDbfs: number): number
}

/** The level above the crossover right now, where it exceeds the threshold: from the gain that the audio thread reports. */
export function SibilanceNow({ detection, index, x, y }: SibilanceNowProps) {
  const met = levelMet(detection, useGainReduction(index) ?? 0)
  return met && <circle className={styles.point} cx={x} cy={y(met.levelDbfs)} r={5} />
}
