import { type KeyboardEvent, useState } from 'react'
import styles from './time-row.module.css'
import { parseTime, printExactTime } from './time-text'

interface TimeFieldProps {
  readonly label: string
  readonly seconds: number
  onChange(seconds: number): void
}

/** A time that can be typed: 8.4 or 1:08.4. Taken on Enter or on leaving the field; Escape puts back what was. */
export function TimeField({ label, seconds, onChange }: TimeFieldProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const wrong = typed !== null && parseTime(typed) === null
  const take = () => {
    if (typed === null) return
    const parsed = parseTime(typed)
    if (parsed === null) return
    setTyped(null)
    onChange(parsed)
  }
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') take()
    if (event.key === 'Escape') setTyped(null)
  }
  return (
    <label className={styles.timeField}>
      {label}
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? printExactTime(seconds)}
        aria-invalid={wrong}
        title={wrong ? 'Type seconds, as 8.4, or minutes and seconds, as 1:08.4' : undefined}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={press}
        onBlur={take}
      />
    </label>
  )
}
