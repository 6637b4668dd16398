import { useEffect, useState } from 'react'

/** Whether files are being dragged over the page right now. Drops outside an area do nothing at all. */
export function useFileDrag(): boolean {
  const [dragging, setDragging] = useState(false)
  useEffect(() => {
    const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
    const over = (event: DragEvent) => {
      if (!carriesFiles(event)) return
      // Without this the browser would leave the page and open the file.
      event.preventDefault()
      setDragging(true)
    }
    const end = (event: DragEvent) => {
      if (carriesFiles(event)) event.preventDefault()
      setDragging(false)
    }
    const leave = (event: DragEvent) => {
      // Leaving the window, not going from one element to the next.
      if (!event.relatedTarget) setDragging(false)
    }
    window.addEventListener('dragover', over)
    window.addEventListener('drop', end)
    window.addEventListener('dragend', end)
    window.addEventListener('dragleave', leave)
    return () => {
      window.removeEventListener('dragover', over)
      window.removeEventListener('drop', end)
      window.removeEventListener('dragend', end)
      window.removeEventListener('dragleave', leave)
    }
  }, [])
  return dragging
}
