import { type BandSettings, bandParameters, printValue } from '../../core'
import { pressSize } from '../controls/key-steps'
import { positionOf, stepped, valueAt } from '../controls/positions'
import { spoken } from '../controls/spoken'
import styles from './band-slider.module.css'
import type { Handle } from './handles'
import { READOUT_ID } from './readout'

interface BandSliderProps {
  readonly handle: Handle
  /** Whether the Tab key goes to it. */
  readonly isStop: boolean
  onChange(patch: Partial<BandSettings>, what: string): void
  onRest(): void
}

/** Which setting the arrow keys move, and which way: as the handle itself would go. */
const ARROWS: ReadonlyMap<string, readonly ['frequencyHz' | 'gainDb', 1 | -1]> = new Map([
  ['ArrowLeft', ['frequencyHz', -1]],
  ['ArrowRight', ['frequencyHz', 1]],
  ['ArrowDown', ['gainDb', -1]],
  ['ArrowUp', ['gainDb', 1]],
])

/** A band as a native slider of its frequency, unseen but for the focus ring; keys up and down set its gain. */
export function BandSlider({ handle, isStop, onChange, onRest }: BandSliderProps) {
  const { band, name, hasGain, top } = handle
  const { frequencyHz } = bandParameters
  if (frequencyHz.type !== 'number') return null
  return (
    <input
      type="range"
      className={styles.slider}
      style={{ top }}
      min={0}
      max={1}
      step="any"
      tabIndex={isStop ? 0 : -1}
      value={positionOf(frequencyHz, band.frequencyHz)}
      aria-label={name}
      aria-valuetext={valueText(handle)}
      aria-describedby={READOUT_ID}
      onChange={(event) =>
        onChange({ frequencyHz: valueAt(frequencyHz, event.currentTarget.valueAsNumber) }, 'frequencyHz')
      }
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey) return
        if (event.key === 'Delete' || event.key === 'Backspace') {
          event.preventDefault()
          if (hasGain) onChange({ gainDb: 0 }, 'gainDb')
          return
        }
        const [moved, direction] = ARROWS.get(event.key) ?? []
        if (!moved || !direction) return
        event.preventDefault()
        const row = bandParameters[moved]
        if (row.type !== 'number' || (moved === 'gainDb' && !hasGain)) return
        onChange({ [moved]: stepped(row, band[moved], direction * pressSize(event)) }, moved)
      }}
      onKeyUp={onRest}
      onBlur={onRest}
    />
  )
}

/** "3 kilohertz, plus 4 decibels, bell". */
function valueText({ band, hasGain, on }: Handle): string {
  const { frequencyHz, gainDb, shape } = bandParameters
  return [
    frequencyHz.type === 'number' && spoken(frequencyHz, band.frequencyHz),
    hasGain && gainDb.type === 'number' && spoken(gainDb, band.gainDb),
    printValue(shape, band.shape),
    !on && 'off',
  ]
    .filter(Boolean)
    .join(', ')
}
