import { useEffect, useEffectEvent } from 'react'
import type { TrialKind } from '../../session/trials/trial-record'
import { type FocusHolder, type TrialKey, trialKeyOf } from '../actions/trial-keys'
import { useScreenStore } from '../context/screen-context'

/** Listens for the keys of a round, wherever in the dialog the focus is. */
export function useTrialKeys(kind: TrialKind, run: (key: TrialKey) => void): void {
  const screen = useScreenStore()
  const press = useEffectEvent((event: KeyboardEvent) => {
    const { key, ctrlKey, metaKey, altKey, repeat, defaultPrevented } = event
    if (defaultPrevented || ctrlKey || metaKey || altKey || repeat) return
    const action = trialKeyOf(key, kind, holderOf(event.target), screen.getState().singleKeys)
    if (!action) return
    event.preventDefault()
    run(action)
  })
  useEffect(() => {
    const listener = (event: KeyboardEvent) => press(event)
    window.addEventListener('keydown', listener)
    return () => window.removeEventListener('keydown', listener)
  }, [])
}

function holderOf(target: EventTarget | null): FocusHolder {
  if (target instanceof HTMLButtonElement) return 'button'
  if (!(target instanceof HTMLInputElement)) return 'none'
  if (target.type === 'range') return 'slider'
  return target.type === 'radio' && !target.checked ? 'radio-to-choose' : 'none'
}
