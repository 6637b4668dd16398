import { type KeyboardEvent, useId, useLayoutEffect, useRef } from 'react'
import { type NumberParameter, printNumber } from '../../core'
import { useWheel } from '../hooks/use-wheel'
import { pressSize } from './key-steps'
import styles from './number-field.module.css'
import { beginsNumber, parseNumber } from './parse-number'
import { stepped } from './positions'
import { useDraft } from './use-draft'
import { useSelectAll } from './use-select-all'

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
 * until it is put right, Escape brings the last value back, or the value becomes another. While it shows its value, all
 * of it is selected: what begins a number takes its place, any other key is the page's.
 */
export function NumberField({ parameter, value, label, describedBy, onChange, onRest }: NumberFieldProps) {
  const printed = printNumber(parameter, value)
  const { input, draft, setDraft, message, setMessage, settle } = useDraft(printed)
  const selectAll = useSelectAll()
  const isLeaving = useRef(false)
  const messageId = useId()

  const change = (next: number) => {
    settle()
    onChange(next)
  }
  const showsValue = draft === null || draft === printed
  const commit = () => {
    // Unchanged text must not round a value that has more digits than are printed.
    if (showsValue) return settle()
    const parsed = parseNumber(parameter, draft)
    if (!parsed.ok) return setMessage(parsed.message)
    change(parsed.value)
    onRest()
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: also when another value is printed.
  useLayoutEffect(() => {
    if (draft === null && document.activeElement === input.current) input.current?.select()
  }, [draft, printed])
  const press = (event: KeyboardEvent) => {
    const { key, ctrlKey, metaKey } = event
    if (key === 'Enter') commit()
    if (key === 'Escape') {
      // What is typed goes first; a sheet closes at the next press.
      if (draft !== null) {
        event.preventDefault()
        event.stopPropagation()
      }
      isLeaving.current = true
      input.current?.blur()
    }
    if (!ctrlKey && !metaKey && beginsNumber(parameter, key)) event.stopPropagation()
    const direction = DIRECTIONS.get(key)
    if (direction === undefined) return
    event.preventDefault()
    change(stepped(parameter, value, direction * pressSize(event)))
  }
  useWheel(input, (direction, event) => change(stepped(parameter, value, direction * pressSize(event))))

  return (
    <>
      <input
        ref={input}
        type="text"
        className={styles.field}
        autoComplete="off"
        spellCheck={false}
        value={draft ?? printed}
        // While something is typed, keys are the field's own, and undo goes back letter by letter.
        data-shows-value={showsValue ? '' : undefined}
        aria-label={label}
        aria-invalid={message !== null}
        aria-describedby={message === null ? describedBy : messageId}
        {...selectAll}
        onChange={(event) => setDraft(event.currentTarget.value)}
        onKeyDown={press}
        onKeyUp={(event) => DIRECTIONS.has(event.key) && onRest()}
        onBlur={() => {
          if (isLeaving.current) settle()
          else commit()
          isLeaving.current = false
          onRest()
        }}
      />
      <span id={messageId} className={styles.message} role="alert">
        {message}
      </span>
    </>
  )
}

const DIRECTIONS: ReadonlyMap<string, number> = new Map([
  ['ArrowUp', 1],
  ['ArrowDown', -1],
])
