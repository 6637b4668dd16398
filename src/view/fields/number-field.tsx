import { useId, useRef, useState } from 'react'
import { type NumberParameter, printNumber } from '../../core'
import { pressSize } from './key-steps'
import styles from './number-field.module.css'
import { parseNumber } from './parse-number'
import { stepped } from './positions'
import { useWheel } from './use-wheel'

interface NumberFieldProps {
  readonly parameter: NumberParameter
  readonly value: number
  readonly label: string
  readonly describedBy?: string
  onChange(value: number): void
  /** A held key or a visit has ended. */
  onRest(): void
}

/**
 * Shows a number with its unit and takes one as people type it. What is not understood stays where it is, marked,
 * until it is put right or Escape brings the last value back.
 */
export function NumberField({ parameter, value, label, describedBy, onChange, onRest }: NumberFieldProps) {
  const [draft, setDraft] = useState<string | null>(null)
  const [message, setMessage] = useState<string | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const messageId = useId()

  const settle = () => {
    setDraft(null)
    setMessage(null)
  }
  const change = (next: number) => {
    settle()
    onChange(next)
  }
  const printed = printNumber(parameter, value)
  const showsValue = draft === null || draft === printed
  const commit = () => {
    // Unchanged text must not round a value that has more digits than are printed.
    if (showsValue) return settle()
    const parsed = parseNumber(parameter, draft)
    if (!parsed.ok) return setMessage(parsed.message)
    change(parsed.value)
    onRest()
  }
  useWheel(input, (direction, event) => change(stepped(parameter, value, direction * pressSize(event))))

  return (
    <span className={styles.holder}>
      <input
        ref={input}
        type="text"
        className={styles.field}
        autoComplete="off"
        spellCheck={false}
        value={draft ?? printed}
        // While something is typed, undo is the browser's and goes back letter by letter.
        data-shows-value={showsValue ? '' : undefined}
        aria-label={label}
        aria-invalid={message !== null}
        aria-describedby={message === null ? describedBy : messageId}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setDraft(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit()
          if (event.key === 'Escape' && draft !== null) {
            event.stopPropagation()
            settle()
          }
          const direction = DIRECTIONS.get(event.key)
          if (direction === undefined) return
          event.preventDefault()
          change(stepped(parameter, value, direction * pressSize(event)))
        }}
        onKeyUp={(event) => DIRECTIONS.has(event.key) && onRest()}
        onBlur={() => {
          commit()
          onRest()
        }}
      />
      <span id={messageId} className={styles.message} role="alert">
        {message}
      </span>
    </span>
  )
}

const DIRECTIONS: ReadonlyMap<string, number> = new Map([
  ['ArrowUp', 1],
  ['ArrowDown', -1],
])
