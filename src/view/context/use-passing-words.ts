import { useCallback, useEffect, useState } from 'react'
import { useApp, useChain } from './app-context'

/** Long enough to be spoken, ms. */
const STAY_MS = 10_000

/**
 * Words for a live region on what was just done with the chain. They disappear after a while, and with its next
 * change, so that nobody reads what is no longer true.
 */
export function usePassingWords(): [words: string, say: (words: string) => void] {
  const app = useApp()
  const [said, setSaid] = useState({ words: '', of: app.chain.getState().chain })
  const isCurrent = useChain(({ chain }) => chain === said.of)
  const say = useCallback((words: string) => setSaid({ words, of: app.chain.getState().chain }), [app])
  useEffect(() => {
    if (said.words === '') return
    const timer = setTimeout(() => say(''), STAY_MS)
    return () => clearTimeout(timer)
  }, [said, say])
  return [isCurrent ? said.words : '', say]
}
