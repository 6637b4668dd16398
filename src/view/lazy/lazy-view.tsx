import { type ComponentType, type ReactNode, useEffect, useReducer, useState } from 'react'
import type { LazyPart } from '../../session/lazy-part'

/** What is shown in place of a view that could not be loaded. */
export interface FailedViewProps {
  readonly message: string
  onRetry(): void
}

interface LazyViewProps<Props extends object> {
  readonly part: LazyPart<ComponentType<Props>>
  readonly props: Props
  /** Shown where the part could not be loaded. */
  readonly failed: ComponentType<FailedViewProps>
  /** Shown until the part is there; it keeps the part's room, so that nothing moves. */
  readonly meanwhile?: ReactNode
}

/** Draws a view whose code is fetched when it is first drawn. Where that fails, it says so and can be asked again. */
export function LazyView<Props extends object>({
  part,
  props,
  failed: Failed,
  meanwhile = null,
}: LazyViewProps<Props>): ReactNode {
  const [, drawAgain] = useReducer((count: number) => count + 1, 0)
  const [attempt, retry] = useReducer((count: number) => count + 1, 0)
  const [message, setMessage] = useState<string | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each attempt fetches again
  useEffect(() => {
    if (part.loaded) return
    let shown = true
    part.load().then(
      () => shown && drawAgain(),
      (error: Error) => shown && setMessage(error.message),
    )
    return () => {
      shown = false
    }
  }, [part, attempt])
  if (part.loaded) return <part.loaded {...props} />
  return message === null ? meanwhile : <Failed message={message} onRetry={retry} />
}
