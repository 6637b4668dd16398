import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** What is being typed into a field, until it is taken or given up. */
interface Draft {
  readonly input: RefObject<HTMLInputElement | null>
  /** Null while the field shows its value. */
  readonly draft: string | null
  setDraft(text: string): void
  /** What is wrong with it. */
  readonly message: string | null
  setMessage(message: string): void
  /** Gives up what is typed. */
  settle(): void
}

/**
 * Holds what is typed into a field that otherwise shows `printed`. Once another value is printed while the field has
 * not the focus, what was left in it is of a value that is no more, and goes.
 */
export function useDraft(printed: string): Draft {
  const [draft, setDraft] = useState<string | null>(null)
  const [message, setMessage] = useState<string | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const settle = () => {
    setDraft(null)
    setMessage(null)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: when another value is printed.
  useLayoutEffect(() => {
    if (document.activeElement !== input.current) settle()
  }, [printed])
  return { input, draft, setDraft, message, setMessage, settle }
}
