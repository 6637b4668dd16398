import { memo } from 'react'
import { useStore } from 'zustand'
import { useStageColour } from '../context/app-context'
import styles from './band-stems.module.css'
import type { Handle } from './handles'
import type { NamedHandle } from './name-places'
import type { PointedStore } from './pointed-store'

/** Half of the head's width, and how far beyond its gain it lies, so that the curve runs clear of it; CSS pixels. */
const HEAD_PX = { half: 8, beyond: 4 }

interface BandStemsProps {
  readonly handles: readonly NamedHandle[]
  readonly pointed: PointedStore
}

/** What is drawn of each handle beneath the curve: a stem from its name over 0 dB to its gain, with a flat head. */
export function BandStems({ handles, pointed }: BandStemsProps) {
  return handles.map((handle) => (
    <Stem
      key={handle.key}
      colourOf={handle.stageId}
      path={stemPath(handle)}
      isOn={handle.on}
      of={handle.key}
      pointed={pointed}
    />
  ))
}

interface StemProps {
  readonly colourOf: string
  readonly path: string
  readonly isOn: boolean
  /** The handle. */
  readonly of: string
  readonly pointed: PointedStore
}

const Stem = memo(({ colourOf, path, isOn, of, pointed }: StemProps) => {
  const colour = useStageColour(colourOf)
  const isHot = useStore(pointed, ({ hovered, focused }) => hovered === of || focused === of)
  return (
    <path className={isOn ? styles.on : styles.off} data-hot={isHot} d={path} style={{ '--stage': colour }} />
  )
})

function stemPath({ left, top, zeroTop, nameTop }: Handle & { readonly nameTop: number }): string {
  const away = top <= zeroTop ? -1 : 1
  const head = top + away * HEAD_PX.beyond
  const foot = (nameTop - zeroTop) * away < 0 ? nameTop : zeroTop
  const x = left.toFixed(1)
  return `M${x},${foot.toFixed(1)}V${head.toFixed(1)}m${-HEAD_PX.half},0h${2 * HEAD_PX.half}`
}
