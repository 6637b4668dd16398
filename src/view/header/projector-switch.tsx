import { useEffect } from 'react'
import { useScreen, useScreenStore } from '../screen-context'

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
          ? 'Back to the bench: key P'
          : 'Larger type and lines, and only what a class needs to see: key P'
      }
      onClick={() => screen.setState({ projector: !projector })}
    >
      {projector ? 'Leave projector' : 'Projector'}
    </button>
  )
}
