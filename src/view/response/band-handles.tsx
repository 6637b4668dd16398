import { useState } from 'react'
import { BandHandle } from './band-handle'
import styles from './band-handles.module.css'
import type { NamedHandle } from './name-places'
import type { Plot } from './plot'
import type { PointedStore } from './pointed-store'
import { neighbourOf } from './roving'

interface BandHandlesProps {
  readonly handles: readonly NamedHandle[]
  readonly plot: Plot
  readonly pointed: PointedStore
  /** Told when a drag begins and ends. */
  onDrag(dragged: boolean): void
}

/** All handles. They are one stop of the Tab key: Page Up and Page Down go from one to the next. */
export function BandHandles({ handles, plot, pointed, onDrag }: BandHandlesProps) {
  const [last, setLast] = useState<string | null>(null)
  const stop = handles.some(({ key }) => key === last) ? last : (handles[0]?.key ?? null)
  if (handles.length === 0) return null
  return (
    // biome-ignore lint/a11y/useSemanticElements: no fieldset, for what is in it stands all over the plot
    <div
      role="group"
      className={styles.handles}
      aria-label="Bands"
      onKeyDown={(event) => {
        const next = neighbourOf(handles, stop, event.key)
        if (next === null || event.ctrlKey || event.metaKey || event.altKey) return
        event.preventDefault()
        const sliders = event.currentTarget.querySelectorAll('input')
        sliders[next]?.focus()
      }}
    >
      {handles.map((handle) => (
        <BandHandle
          key={handle.key}
          handle={handle}
          isStop={handle.key === stop}
          plot={plot}
          pointed={pointed}
          onStop={setLast}
          onDrag={onDrag}
        />
      ))}
    </div>
  )
}
