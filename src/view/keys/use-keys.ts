import { useEffect } from 'react'
import { useApp } from '../context/app-context'
import { useFilePickers } from '../context/file-pickers'
import { useScreenStore } from '../context/screen-context'
import { changesChain, keyHolderOf, keyRowOf } from './key-press'

/**
 * Listens for the page's keys. A sheet, a text field, or whoever already used a press keeps it. A field whose text is
 * nothing but the setting it stands for leaves to the page what it does not stop.
 */
export function useKeys(): void {
  const app = useApp()
  const screen = useScreenStore()
  const { chooseTake } = useFilePickers()
  useEffect(() => {
    // A button that was clicked has the focus too, but whoever clicked it means Space to play.
    let clicked: Element | null = null
    const click = ({ detail }: MouseEvent) => {
      // A press of Space or Enter counts as a click too, of no mouse button.
      clicked = detail > 0 ? document.activeElement : null
    }
    const move = (event: FocusEvent) => {
      if (event.target !== clicked) clicked = null
    }
    const press = (event: KeyboardEvent) => {
      const { sheet, singleKeys } = screen.getState()
      if (event.defaultPrevented || sheet !== null) return
      const row = keyRowOf(event)
      if (row === null) return
      const changes = changesChain(row)
      if (!singleKeys && !changes) return
      const holder = holderOf(event.target)
      const pressesButton = holder === 'button' && event.key === ' '
      const typing = holder === 'text' && !showsItsValue(event.target)
      if (typing || (holder === 'list' && !changes) || (pressesButton && event.target !== clicked)) return
      // Let go of the button, which would answer to the release of the key.
      if (pressesButton && event.target instanceof HTMLElement) event.target.blur()
      event.preventDefault()
      row.run({ app, screen, chooseTake })
    }
    window.addEventListener('keydown', press)
    window.addEventListener('click', click)
    window.addEventListener('focusin', move)
    return () => {
      window.removeEventListener('keydown', press)
      window.removeEventListener('click', click)
      window.removeEventListener('focusin', move)
    }
  }, [app, screen, chooseTake])
}

/** Whether a field says that there is nothing typed in it which has not been taken yet. */
function showsItsValue(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.dataset.showsValue !== undefined
}

function holderOf(target: EventTarget | null) {
  if (!(target instanceof HTMLElement)) return 'none'
  const type = target instanceof HTMLInputElement ? target.type : ''
  return keyHolderOf(target.tagName, type, target.getAttribute('role'), target.isContentEditable)
}
