import { type ReactNode, Suspense, useState } from 'react'
import { useScreen } from './context/screen-context'
import type { SheetName } from './context/screen-store'
import { ErrorBoundary } from './notices/error-boundary'

interface SheetOnDemandProps {
  readonly name: SheetName
  /** A sheet whose code is fetched when it is first drawn. */
  readonly children: ReactNode
}

/** Draws a sheet from when it is first asked for, so that the page comes in without it. */
export function SheetOnDemand({ name, children }: SheetOnDemandProps) {
  const isOpen = useScreen(({ sheet }) => sheet === name)
  const [wanted, setWanted] = useState(isOpen)
  if (isOpen && !wanted) setWanted(true)
  if (!wanted) return null
  return (
    <ErrorBoundary what="The sheet">
      <Suspense>{children}</Suspense>
    </ErrorBoundary>
  )
}
