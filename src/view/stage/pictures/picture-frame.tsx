import type { ReactNode } from 'react'
import { useSize } from '../../hooks/use-size'
import { useTextScale } from '../../hooks/use-text-scale'
import styles from './picture-frame.module.css'

/** Until it is laid out, CSS pixels. */
const FIRST = { width: 200, height: 200 }
/** Room around the plot at the usual text size, CSS pixels. */
const MARGINS = { left: 26, right: 8, top: 8, bottom: 34 }

/** Where a picture may draw, CSS pixels from its upper left corner. */
export interface PlotArea {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Size of text against the usual. */
  readonly textScale: number
}

interface PictureFrameProps {
  /** The sentence that says what the picture shows. */
  readonly label: string
  /** Whether what it shows is being worked out. */
  readonly busy?: boolean
  children(area: PlotArea): ReactNode
}

/** A picture that fills the room it is given, with margins for its scales. */
export function PictureFrame({ label, busy = false, children }: PictureFrameProps) {
  const [box, { width, height }] = useSize(FIRST)
  const textScale = useTextScale()
  const { left, right, top, bottom } = MARGINS
  return (
    <div ref={box} className={styles.box} aria-busy={busy}>
      <svg className={styles.picture} width={width} height={height} role="img" aria-label={label}>
        {children({
          left: left * textScale,
          right: width - right * textScale,
          top: top * textScale,
          bottom: Math.max(top + 1, height - bottom * textScale),
          textScale,
        })}
      </svg>
    </div>
  )
}
