import { type ComponentType, useState } from 'react'
import type { LazyPart } from '../session/lazy-part'
import { useScreen } from './context/screen-context'
import type { SheetName } from './context/screen-store'
import { FailedSheet } from './lazy/failed-part'
import { LazyView } from './lazy/lazy-view'
import { ErrorBoundary } from './notices/error-boundary'

interface SheetOnDemandProps {
  readonly name: SheetName
  readonly part: LazyPart<ComponentType>
}

const NO_PROPS = {}

/** Draws a sheet from when it is first asked for; one that could not be loaded only while it is open. */
export function SheetOnDemand({ name, part }: SheetOnDemandProps) {
  const isOpen = useScreen(({ sheet }) => sheet === name)
  const [wanted, setWanted] = useState(isOpen)
  if (isOpen && !wanted) setWanted(true)
  if (!wanted || !(isOpen || part.loaded)) return null
  return (
    <ErrorBoundary what="The sheet">
      <LazyView part={part} props={NO_PROPS} failed={FailedSheet} />
    </ErrorBoundary>
  )
}
