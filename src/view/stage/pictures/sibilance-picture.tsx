import { scaleLinear } from 'd3-scale'
import { useMemo } from 'react'
import { detectorOf, plain, plainInSentence, type SibilantLevel } from '../../../core'
import { useDetail, useStageColour } from '../../context/app-context'
import { CrossoverLine } from './crossover-line'
import { DragHandle } from './drag-handle'
import { PictureFrame, type PlotArea } from './picture-frame'
import type { PictureProps } from './picture-props'
import pictures from './pictures.module.css'
import { circlesPath, ranked, sibilanceScale } from './sibilance-geometry'
import { SibilanceNow } from './sibilance-now'
import styles from './sibilance-picture.module.css'

const NONE: readonly SibilantLevel[] = []

/**
 * Each sibilant of the take as its detector sees it, from the loudest down, on a stem from the vowel next to it: filled
 * where it exceeds the threshold. Threshold and crossover are dragged.
 */
export function SibilancePicture({ picture: { detection }, stage, index }: PictureProps<'sibilance'>) {
  const { thresholdDb } = detection
  const colour = useStageColour(stage.id)
  const known = useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.sibilants : null)) ?? null
  const sibilants = known ?? NONE
  const shown = useMemo(() => ranked(sibilants), [sibilants])
  const { low, high } = sibilanceScale(shown, thresholdDb)
  const detector = detectorOf(stage)
  const draw = ({ left, right, top, bottom, textScale }: PlotArea) => {
    const y = scaleLinear([low, high], [bottom, top]).clamp(true)
    const step = (right - left - 24 * textScale) / Math.max(1, shown.length)
    const x = (rank: number) => left + (rank + 0.5) * step
    const radius = Math.max(1.5, Math.min(4 * textScale, step / 2))
    const centres = shown.map(({ levelDbfs }, rank) => [x(rank), y(levelDbfs)] as const)
    const passing = shown.filter(({ levelDbfs }) => levelDbfs > thresholdDb).length
    const stems = shown
      .flatMap(({ levelDbfs, vowelDbfs }, rank) =>
        vowelDbfs === null
          ? []
          : `M${x(rank).toFixed(1)},${y(vowelDbfs).toFixed(1)}V${y(levelDbfs).toFixed(1)}`,
      )
      .join('')
    const feet = shown
      .flatMap(({ vowelDbfs }, rank) =>
        vowelDbfs === null
          ? []
          : `M${(x(rank) - radius).toFixed(1)},${y(vowelDbfs).toFixed(1)}h${2 * radius}`,
      )
      .join('')
    const at = y(thresholdDb)
    return (
      <g style={{ '--stage': colour }}>
        {y.ticks(4).map((db) => (
          <g key={db}>
            <path className={pictures.grid} d={`M${left},${y(db)}H${right}`} />
            <text className={pictures.tick} x={left - 4} y={y(db)} dy="0.35em" textAnchor="end">
              {plain(db, 0)}
            </text>
          </g>
        ))}
        <path className={styles.stem} d={stems} />
        <path className={styles.vowel} d={feet} />
        <path className={styles.below} d={circlesPath(centres.slice(passing), radius)} />
        <path className={styles.passing} d={circlesPath(centres.slice(0, passing), radius)} />
        {stage.on && <SibilanceNow detection={detection} index={index} x={right - 8 * textScale} y={y} />}
        <path className={pictures.threshold} d={`M${left},${at}H${right}`} />
        <text className={pictures.word} x={right - 16 * textScale} y={at - 5} textAnchor="end">
          threshold {plainInSentence(thresholdDb, 1)}
        </text>
        {known?.length === 0 && (
          <text className={pictures.word} x={(left + right) / 2} y={top + 24 * textScale} textAnchor="middle">
            no sibilants found
          </text>
        )}
        {detector && (
          <DragHandle
            stageId={stage.id}
            setting={detector.threshold}
            x={right}
            y={at}
            along="y"
            textScale={textScale}
            line={`M${left},${at}H${right}`}
            valueAt={(start, _, dy) => start - (dy * (high - low)) / (bottom - top)}
          />
        )}
        {detector?.crossover && (
          <CrossoverLine
            stageId={stage.id}
            crossover={detector.crossover}
            left={left}
            right={right}
            y={bottom + 12 * textScale}
            textScale={textScale}
          />
        )}
      </g>
    )
  }
  return (
    <PictureFrame label={sentenceOf(sibilants, thresholdDb)} busy={known === null}>
      {draw}
    </PictureFrame>
  )
}

function sentenceOf(sibilants: readonly SibilantLevel[], thresholdDb: number): string {
  const threshold = `the threshold of ${plainInSentence(thresholdDb, 1)} dBFS`
  const passing = sibilants.filter(({ levelDbfs }) => levelDbfs > thresholdDb).length
  const loudest = Math.max(...sibilants.map(({ levelDbfs }) => levelDbfs))
  return sibilants.length === 0
    ? `Sibilants above the crossover against ${threshold}: none known.`
    : `Sibilants above the crossover, each against the vowel next to it: ${passing} of ${sibilants.length} exceed ${threshold}, the loudest at ${plainInSentence(loudest, 1)} dBFS.`
}
