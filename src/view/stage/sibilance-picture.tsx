import { scaleLinear, scaleLog } from 'd3-scale'
import { frequency, plain, type SettingsByKind } from '../../core'
import { useEvidence, useStageColour } from '../bench-context'
import { spectrumPath } from '../curve/spectrum-path'
import { PictureFrame } from './picture-frame'
import styles from './sibilance-picture.module.css'

const WIDTH = 200
const HEIGHT = 190
const LEFT = 30
const BOTTOM = HEIGHT - 24
const x = scaleLog([200, 20_000], [LEFT, WIDTH - 12])
const y = scaleLinear([-90, 0], [BOTTOM, 8])
const TICKS_HZ = [200, 1000, 5000]
const TICKS_DB = [-80, -60, -40, -20, 0]

interface SibilancePictureProps {
  readonly settings: SettingsByKind['de-esser']
  readonly stageId: string
}

/** Where a de-esser splits the sound and what level it holds, over the spectrum of the take. */
export function SibilancePicture({ settings: { crossoverHz, thresholdDb }, stageId }: SibilancePictureProps) {
  const evidence = useEvidence((state) => state.evidence)
  const colour = useStageColour(stageId)
  const split = x(crossoverHz)
  const held = y(thresholdDb)
  return (
    <PictureFrame
      width={WIDTH}
      height={HEIGHT}
      label={`What lies above ${frequency(crossoverHz)} is held to ${plain(thresholdDb, 1)} dBFS, drawn over the spectrum of the take.`}
      caption="Over the average spectrum: single S and T stand far above it."
    >
      <rect className={styles.above} x={split} y={8} width={WIDTH - 12 - split} height={BOTTOM - 8} />
      {TICKS_HZ.map((hz) => (
        <text key={hz} className={styles.tick} x={x(hz)} y={BOTTOM + 16} textAnchor="middle">
          {hz < 1000 ? hz : `${hz / 1000}k`}
        </text>
      ))}
      {TICKS_DB.map((db) => (
        <text key={db} className={styles.tick} x={LEFT - 6} y={y(db)} dy="0.35em" textAnchor="end">
          {plain(db, 0)}
        </text>
      ))}
      <text className={styles.tick} x={LEFT + 6} y={16}>
        dBFS
      </text>
      <text className={styles.tick} x={WIDTH - 12} y={BOTTOM + 16} textAnchor="end">
        Hz
      </text>
      <path className={styles.axes} d={`M${LEFT},8V${BOTTOM}H${WIDTH - 12}`} />
      {evidence && <path className={styles.without} d={spectrumPath(evidence.without.spectrum, x, y)} />}
      {evidence && <path className={styles.with} d={spectrumPath(evidence.with.spectrum, x, y)} />}
      <path
        className={styles.split}
        style={{ '--stage': colour }}
        d={`M${split},${BOTTOM}V${held}H${WIDTH - 12}`}
      />
    </PictureFrame>
  )
}
