import { useEffect } from 'react'
import { useScreen } from '../context/screen-context'

/** Tells styles which theme and which view were chosen. */
export function useLookOfPage(): void {
  const theme = useScreen((state) => state.theme)
  const projector = useScreen((state) => state.projector)
  useEffect(() => {
    document.documentElement.dataset.theme = theme
  }, [theme])
  useEffect(() => {
    document.documentElement.dataset.view = projector ? 'projector' : 'desk'
  }, [projector])
}
