import { useEffect } from 'react'
import type { ListenState } from '../../../session/listening/listen-store'
import { useApp } from '../../context/app-context'

/** Calm enough to read, ms. */
const EVERY_MS = 250

/** What is collected of what is listened to, and told now and then. */
interface Reading {
  /** With every change. */
  collect(now: ListenState, before: ListenState): void
  /** Four times a second: shows what was collected since. */
  tell(now: ListenState): void
}

/** Reads levels so rarely that they can be read. @param begin the same function as long as what it needs is the same */
export function useCalmReading(begin: () => Reading): void {
  const { listen } = useApp()
  useEffect(() => {
    const { collect, tell } = begin()
    const stop = listen.subscribe(collect)
    const timer = setInterval(() => tell(listen.getState()), EVERY_MS)
    return () => {
      stop()
      clearInterval(timer)
    }
  }, [listen, begin])
}
