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
      aria-pressed={projector}
      title="Larger type and lines, and only what a class needs to see"
      onClick={() => screen.setState({ projector: !projector })}
    >
      Projector
    </button>
  )
}
