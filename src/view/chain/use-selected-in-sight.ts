import { type RefObject, useLayoutEffect } from 'react'

/** Keeps the card of the selected stage in the middle of a line that scrolls sideways. The page stays where it is. */
export function useSelectedInSight(
  list: RefObject<HTMLOListElement | null>,
  selectedId: string | null,
  scrolls: boolean,
): void {
  useLayoutEffect(() => {
    const line = list.current
    if (!line || !scrolls || selectedId === null) return
    const card = line.querySelector(`[data-stage-id="${CSS.escape(selectedId)}"]`)
    if (!card) return
    const [seen, box] = [line.getBoundingClientRect(), card.getBoundingClientRect()]
    line.scrollBy({ left: (box.left + box.right - seen.left - seen.right) / 2 })
  }, [list, selectedId, scrolls])
}
