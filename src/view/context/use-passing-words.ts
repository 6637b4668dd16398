import { useCallback, useEffect, useState } from 'react'
import { useApp, useChain } from './app-context'

/** Long enough to be spoken, ms. */
const STAY_MS = 10_000

/**
 * Words for a live region on what was just done with the chain. They go after a while, and with the next change of it,
 * so that nobody comes upon what is no longer so.
 */
export function usePassingWords(): [words: string, say: (words: string) => void] {
  const app = useApp()
  const [said, setSaid] = useState({ words: '', of: app.chain.getState().chain })
  const holds = useChain(({ chain }) => chain === said.of)
  const say = useCallback((words: string) => setSaid({ words, of: app.chain.getState().chain }), [app])
  useEffect(() => {
    if (said.words === '') return
    const timer = setTimeout(() => say(''), STAY_MS)
    return () => clearTimeout(timer)
  }, [said, say])
  return [holds ? said.words : '', say]
}
