import { type MouseEvent, useRef } from 'react'

/**
 * Selects all of a field's text when it gets the focus: at once by key, at the end of a click by mouse or finger, unless
 * a part was selected by dragging. A click while it has the focus places the caret.
 */
export function useSelectAll() {
  const isPressed = useRef(false)
  return {
    onFocus({ currentTarget: input }: { readonly currentTarget: HTMLInputElement }) {
      if (!isPressed.current) input.select()
    },
    onMouseDown({ currentTarget: input }: MouseEvent<HTMLInputElement>) {
      if (document.activeElement === input) return
      isPressed.current = true
      window.addEventListener(
        'mouseup',
        (event) => {
          isPressed.current = false
          if (document.activeElement !== input || input.selectionStart !== input.selectionEnd) return
          // WebKit would place the caret now.
          event.preventDefault()
          input.select()
        },
        { once: true },
      )
    },
  }
}
