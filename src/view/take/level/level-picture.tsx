import { memo, useLayoutEffect, useRef } from 'react'
import type { DetectorLevel } from '../../../core'
import type { TimeView } from '../time/time-view'
import { depthOf, type LevelRange, levelColumns } from './level-geometry'
import styles from './level-picture.module.css'

/** Width of a column, CSS pixels. */
const COLUMN_PX = 1

interface LevelPictureProps {
  /** Null while it is not known: nothing is drawn then. */
  readonly level: DetectorLevel | null
  readonly view: TimeView
  readonly range: LevelRange
  readonly width: number
  readonly height: number
  /** One sentence on what the picture shows. */
  readonly sentence: string
}

/**
 * A level along the take, twice: in pale ink, and over it in the stage's colour, of which the styles show what exceeds the
 * threshold. So a threshold that moves draws nothing anew.
 */
export const LevelPicture = memo(({ level, view, range, width, height, sentence }: LevelPictureProps) => {
  const below = useRef<HTMLCanvasElement>(null)
  const above = useRef<HTMLCanvasElement>(null)
  useLayoutEffect(() => {
    const columns = level && levelColumns(level, view, Math.max(1, Math.ceil(width / COLUMN_PX)))
    for (const { current: canvas } of [below, above]) {
      const context = canvas?.getContext('2d')
      if (!canvas || !context) continue
      canvas.width = Math.max(1, Math.round(width * devicePixelRatio))
      canvas.height = Math.max(1, Math.round(height * devicePixelRatio))
      if (columns) drawLevel(context, canvas, columns, range)
    }
  }, [level, view, range, width, height])
  const size = { width, height }
  return (
    <div role="img" aria-label={sentence}>
      <canvas ref={below} className={styles.below} style={size} />
      <canvas ref={above} className={styles.above} style={size} />
    </div>
  )
})

/** Fills what lies under the level in one path, in the colour of the canvas. */
function drawLevel(
  context: CanvasRenderingContext2D,
  canvas: HTMLCanvasElement,
  columns: Float32Array,
  range: LevelRange,
): void {
  const { width, height } = canvas
  const step = width / columns.length
  context.fillStyle = getComputedStyle(canvas).color
  context.beginPath()
  context.moveTo(0, height)
  for (let column = 0; column < columns.length; column++) {
    const y = depthOf(columns[column] ?? Number.NEGATIVE_INFINITY, range) * height
    context.lineTo(column * step, y)
    context.lineTo((column + 1) * step, y)
  }
  context.lineTo(width, height)
  context.fill()
}
