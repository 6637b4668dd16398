import type { SettingsByKind } from '../../core'
import { levelMet } from './sibilance-level'
import { useGainReduction } from './use-gain-reduction'
import styles from './working-point.module.css'

interface SibilanceNowProps {
  readonly settings: SettingsByKind['de-esser']
  readonly index: number
  /** Where the point stands sideways. */
  readonly x: number
  y(levelDbfs: number): number
}

/** How loud it is above the crossover just now, where that passes the threshold: from what the audio thread reports. */
export function SibilanceNow({ settings, index, x, y }: SibilanceNowProps) {
  const met = levelMet(settings, useGainReduction(index) ?? 0)
  return met && <circle className={styles.point} cx={x} cy={y(met.levelDbfs)} r={5} />
}
