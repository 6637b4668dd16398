import { useEffect } from 'react'
import { printedKey } from '../actions/key-table'
import { useScreen, useScreenStore } from '../context/screen-context'

/** The view for a class: larger, and without what need not be shown. */
export function ProjectorSwitch() {
  const screen = useScreenStore()
  const projector = useScreen((state) => state.projector)
  useEffect(() => {
    document.documentElement.dataset.view = projector ? 'projector' : 'desk'
  }, [projector])
  return (
    <button
      type="button"
      data-class-view
      title={
        projector
          ? `Back to the normal view: key ${printedKey('projector')}`
          : `Larger type and lines, and only what a class needs to see: key ${printedKey('projector')}`
      }
      onClick={() => screen.setState({ projector: !projector })}
    >
      {projector ? 'Leave projector' : 'Projector'}
    </button>
  )
}
