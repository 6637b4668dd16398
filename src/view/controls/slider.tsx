import { useRef } from 'react'
import type { NumberParameter } from '../../core'
import { useWheel } from '../hooks/use-wheel'
import { keyedValue, pressSize } from './key-steps'
import { positionOf, stepped, valueAt } from './positions'
import styles from './slider.module.css'
import { spoken } from './spoken'
import { useSlide } from './use-slide'

interface SliderProps {
  readonly parameter: NumberParameter
  readonly value: number
  /** What it sets, for those who cannot see the label beside it. */
  readonly label: string
  readonly describedBy?: string
  onChange(value: number): void
  /** A drag, a held key or a visit has ended. */
  onRest(): void
}

/** A native slider that travels on the parameter's own scale. */
export function Slider({ parameter, value, label, describedBy, onChange, onRest }: SliderProps) {
  const input = useRef<HTMLInputElement>(null)
  useWheel(input, (direction, event) => onChange(stepped(parameter, value, direction * pressSize(event))))
  const slide = useSlide({ parameter, value, onChange, onRest })
  const position = positionOf(parameter, value)
  return (
    <input
      ref={input}
      type="range"
      className={styles.slider}
      style={{ '--filled': `${position * 100}%` }}
      min={0}
      max={1}
      step="any"
      value={position}
      aria-label={label}
      aria-valuetext={spoken(parameter, value)}
      aria-describedby={describedBy}
      onChange={(event) => {
        if (!slide.isPressed()) onChange(valueAt(parameter, event.currentTarget.valueAsNumber))
      }}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey) return
        const next = keyedValue(parameter, value, event)
        if (next === null) return
        event.preventDefault()
        onChange(next)
      }}
      onDoubleClick={() => {
        onChange(parameter.default)
        onRest()
      }}
      onPointerDown={(event) => {
        onRest()
        slide.down(event)
      }}
      onPointerUp={onRest}
      onPointerCancel={onRest}
      onKeyUp={onRest}
      onBlur={onRest}
    />
  )
}
