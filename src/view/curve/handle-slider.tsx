import { type BandSettings, bandParameters } from '../../core'
import { keyedValue, pressSize } from '../controls/key-steps'
import { positionOf, stepped, valueAt } from '../controls/positions'
import { spoken } from '../controls/spoken'
import styles from './handle-slider.module.css'
import type { Handle } from './handles'

interface HandleSliderProps {
  readonly handle: Handle
  readonly name: string
  readonly setting: 'frequencyHz' | 'gainDb'
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

/** One setting of a band as a native slider laid over its handle, unseen but for the focus ring. */
export function HandleSlider({ handle, name, setting, onChange, onRest }: HandleSliderProps) {
  const { band, hasGain } = handle
  const parameter = bandParameters[setting]
  if (parameter.type !== 'number') return null
  return (
    <input
      type="range"
      className={styles.slider}
      min={0}
      max={1}
      step="any"
      value={positionOf(parameter, band[setting])}
      aria-label={`Band ${name}, ${parameter.label}`}
      aria-valuetext={spoken(parameter, band[setting])}
      onChange={(event) =>
        onChange({ [setting]: valueAt(parameter, event.currentTarget.valueAsNumber) }, setting)
      }
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey) return
        const [moved, direction] = ARROWS.get(event.key) ?? []
        if (!moved || !direction) {
          const next = keyedValue(parameter, band[setting], event)
          if (next === null) return
          event.preventDefault()
          onChange({ [setting]: next }, setting)
          return
        }
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
