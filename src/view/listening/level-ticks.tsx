import { sideWords } from '../../session/comparison/side-words'
import { useEvidence, useListen } from '../context/app-context'
import { inWords } from '../words/in-words'
import styles from './level-ticks.module.css'
import { loweredSide } from './matched-words'

/** Size of the picture and distance of the ticks from its middle, CSS pixels. */
const WIDTH = 40
const HEIGHT = 36
const MOST_RISE = 14
/** A difference of so many dB or more is drawn as the largest. */
const MOST_DB = 9

/** Loudness of both sides as two ticks: where each would stand by itself, and level where they are matched. */
export function LevelTicks() {
  const matched = useListen((state) => state.matched)
  const sides = sideWords(useListen((state) => state.scope))
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  if (!gains || gains.measuredOver === 'nothing') return null
  const louder = loweredSide(gains)
  const differenceDb = -Math.min(gains.bypassedDb, gains.processedDb)
  const rise = (Math.min(differenceDb, MOST_DB) / MOST_DB) * MOST_RISE
  const base = (HEIGHT + MOST_RISE) / 2
  const tick = (x: number, y: number) => `M${x} ${y}h14`
  const own = (side: 'bypassed' | 'processed') => (side === louder ? base - rise : base)
  const played = (side: 'bypassed' | 'processed') => (matched ? base : own(side))
  const before = louder ? `“${sides[louder]}” is ${inWords(differenceDb)} dB louder` : 'Both are equally loud'
  const now = matched ? 'they play level' : 'each plays at its own level'
  return (
    <svg
      className={styles.ticks}
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${before}; ${now}.`}
    >
      {matched && louder && (
        <path
          className={styles.moved}
          d={`${tick(louder === 'bypassed' ? 4 : 22, base - rise)}m-7 0v${rise}`}
        />
      )}
      <path className={styles.bypassed} d={tick(4, played('bypassed'))} />
      <path className={styles.processed} d={tick(22, played('processed'))} />
    </svg>
  )
}
