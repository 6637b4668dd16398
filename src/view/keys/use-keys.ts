import { useEffect } from 'react'
import { useBench } from '../bench-context'
import { useFilePickers } from '../files/file-pickers'
import { useScreenStore } from '../screen-context'
import { keyActionOf, keyHolderOf } from './key-actions'
import { runKeyAction } from './run-key-action'

/** Listens for the page's keys. A sheet, a text field, or whoever already used a press keeps it. */
export function useKeys(): void {
  const bench = useBench()
  const screen = useScreenStore()
  const { chooseTake } = useFilePickers()
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const { sheet, singleKeys } = screen.getState()
      if (event.defaultPrevented || sheet !== null) return
      const action = keyActionOf(event)
      if (action === null) return
      if (!singleKeys && action !== 'undo' && action !== 'redo') return
      const holder = holderOf(event.target)
      if (holder === 'text' || (holder === 'button' && event.key === ' ')) return
      event.preventDefault()
      runKeyAction(action, bench, screen, chooseTake)
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [bench, screen, chooseTake])
}

function holderOf(target: EventTarget | null) {
  if (!(target instanceof HTMLElement)) return 'none'
  const type = target instanceof HTMLInputElement ? target.type : ''
  return keyHolderOf(target.tagName, type, target.getAttribute('role'), target.isContentEditable)
}
