import { type KeyboardEvent, useId } from 'react'
import { useDraft } from '../../controls/use-draft'
import { parseTime, printExactTime } from '../../words/time-text'
import styles from './time-field.module.css'

interface TimeFieldProps {
  readonly label: string
  readonly seconds: number
  /** What to say to a time that cannot be; null where it can. */
  refusal(seconds: number): string | null
  onChange(seconds: number): void
}

/**
 * A time that can be typed: 8.4 or 1:08.4. Taken on Enter or on leaving the field. What cannot be taken stays where it
 * is, marked, until it is put right, Escape brings back what was, or the time itself becomes another.
 */
export function TimeField({ label, seconds, refusal, onChange }: TimeFieldProps) {
  const printed = printExactTime(seconds)
  const { input, draft, setDraft, message, setMessage, settle } = useDraft(printed)
  const messageId = useId()

  const take = () => {
    if (draft === null || draft === printed) return settle()
    const parsed = parseTime(draft)
    if (parsed === null) return setMessage(NOT_A_TIME)
    const wrong = refusal(parsed)
    if (wrong !== null) return setMessage(wrong)
    settle()
    onChange(parsed)
  }
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') take()
    if (event.key === 'Escape') settle()
  }
  return (
    <span className={styles.field}>
      <label>
        {label}
        <input
          ref={input}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={draft ?? printed}
          aria-invalid={message !== null}
          aria-describedby={messageId}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={press}
          onBlur={take}
        />
      </label>
      <span id={messageId} className={styles.message} role="alert">
        {message}
      </span>
    </span>
  )
}

const NOT_A_TIME = 'Not understood. Type seconds, as 8.4, or minutes and seconds, as 1:08.4.'
