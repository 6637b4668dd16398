import { useEffect, useState } from 'react'

/** Long enough to be spoken, ms. */
const STAY_MS = 10_000

/** Words for a live region. They go after a while, so that nobody comes upon what is no longer so. */
export function usePassingWords(): [words: string, say: (words: string) => void] {
  const [words, setWords] = useState('')
  useEffect(() => {
    if (words === '') return
    const timer = setTimeout(() => setWords(''), STAY_MS)
    return () => clearTimeout(timer)
  }, [words])
  return [words, setWords]
}
