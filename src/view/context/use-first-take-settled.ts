import { useState } from 'react'
import { useTake } from './app-context'

/** Whether the first take has come, or none is coming any more; true from then on. */
export function useFirstTakeSettled(): boolean {
  const settles = useTake(({ take, loading }) => take !== null || loading === null)
  const [settled, setSettled] = useState(settles)
  if (settles && !settled) setSettled(true)
  return settled
}
