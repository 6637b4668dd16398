import { scaleLinear, scaleLog } from 'd3-scale'
import { frequency, plain, plainInSentence } from '../../../core'
import { useEvidence, useListen, useStageColour } from '../../context/app-context'
import { spectrumPath } from '../../plot/spectrum-path'
import { LoudestSibilance } from './loudest-sibilance'
import { PictureFrame } from './picture-frame'
import type { PictureProps } from './picture-props'
import pictures from './pictures.module.css'
import { loudestMet, type MetLevel } from './sibilance-level'
import { SibilanceNow } from './sibilance-now'
import styles from './sibilance-picture.module.css'

const WIDTH = 200
const HEIGHT = 190
const LEFT = 30
const RIGHT = WIDTH - 12
const TOP = 8
const BOTTOM = HEIGHT - 24
const x = scaleLog([200, 20_000], [LEFT, RIGHT])
const y = scaleLinear([-90, 0], [BOTTOM, TOP]).clamp(true)
const TICKS_HZ = [200, 1000, 5000]
const TICKS_DB = [-80, -60, -40, -20, 0]

/**
 * What a de-esser compares with its threshold: the level above the crossover, at its loudest and right now. The average
 * spectrum lies beneath it, to show where the crossover splits.
 */
export function SibilancePicture({ picture: { detection }, stageId, index, on }: PictureProps<'sibilance'>) {
  const { crossoverHz, thresholdDb } = detection
  const evidence = useEvidence((state) => state.evidence)
  const playing = useListen((state) => state.playing)
  const colour = useStageColour(stageId)
  const reduction = on ? evidence?.stages.get(stageId)?.reduction : null
  const loudest =
    evidence && reduction ? loudestMet(evidence.chains.processed, stageId, reduction.maxDb) : null
  const passing = loudest && loudest.levelDbfs > thresholdDb ? loudest : null
  const split = x(crossoverHz)
  return (
    <PictureFrame
      width={WIDTH}
      height={HEIGHT}
      label={`What lies above ${frequency(crossoverHz)} is reduced where it exceeds ${plainInSentence(thresholdDb, 1)} dBFS${loudestWords(passing)}; drawn over the average spectrum of the take.`}
      caption={captionOf(playing && on, reduction ? passing !== null : null)}
    >
      <rect className={styles.above} x={split} y={TOP} width={RIGHT - split} height={BOTTOM - TOP} />
      {TICKS_HZ.map((hz) => (
        <text key={hz} className={pictures.tick} x={x(hz)} y={BOTTOM + 16} textAnchor="middle">
          {hz < 1000 ? hz : `${hz / 1000}k`}
        </text>
      ))}
      {TICKS_DB.map((db) => (
        <text key={db} className={pictures.tick} x={LEFT - 6} y={y(db)} dy="0.35em" textAnchor="end">
          {plain(db, 0)}
        </text>
      ))}
      <text className={pictures.tick} x={LEFT + 6} y={16}>
        dBFS
      </text>
      <text className={pictures.tick} x={RIGHT} y={BOTTOM + 16} textAnchor="end">
        Hz
      </text>
      <path className={pictures.axes} d={`M${LEFT},${TOP}V${BOTTOM}H${RIGHT}`} />
      {evidence && <path className={styles.bypassed} d={spectrumPath(evidence.bypassed.spectrum, x, y)} />}
      {evidence && <path className={styles.processed} d={spectrumPath(evidence.processed.spectrum, x, y)} />}
      <g style={{ '--stage': colour }}>
        {passing && (
          <LoudestSibilance
            met={passing}
            thresholdDb={thresholdDb}
            left={split}
            right={RIGHT}
            start={LEFT}
            y={y}
          />
        )}
        <path className={styles.split} d={`M${split},${BOTTOM}V${y(thresholdDb)}H${RIGHT}`} />
      </g>
      {on && <SibilanceNow detection={detection} index={index} x={(split + RIGHT) / 2} y={y} />}
    </PictureFrame>
  )
}

function loudestWords(passing: MetLevel | null): string {
  if (passing === null) return ''
  const level = `${plainInSentence(passing.levelDbfs, 1)} dBFS`
  return passing.orMore ? `, and exceeds ${level}` : `, and reaches ${level}`
}

/** @param passes whether anything exceeds the threshold; null while that is not known */
function captionOf(playing: boolean, passes: boolean | null): string {
  if (passes === null) return 'Lines: average spectrum.'
  if (!passes) return 'Nothing exceeds the threshold. Lines: average spectrum.'
  return playing
    ? 'Dot: the level right now. Lines: average spectrum.'
    : 'Tinted: above the threshold. Lines: average spectrum.'
}
