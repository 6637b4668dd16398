import { type ComponentType, memo, useMemo } from 'react'
import {
  magnitudeDb,
  pictureOf,
  type StageDoc,
  type StagePicture,
  type StagePictureKind,
} from '../../../core'
import { useStageColour, useTake } from '../../context/app-context'
import { frequencyX, gainY, HEIGHT, responsePath, transferPath, WIDTH } from './card-paths'
import styles from './figures.module.css'
import { StaticCurveCard } from './static-curve-card'

interface CardPictureProps {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
}

interface PartProps<Kind extends StagePictureKind> {
  readonly stage: StageDoc
  readonly picture: Extract<StagePicture, { kind: Kind }>
  /** Position of the stage in the chain, from 0. */
  readonly index: number
}

/** Who draws which picture of settings: a kind of picture without a component does not compile. */
const components: { readonly [Kind in StagePictureKind]: ComponentType<PartProps<Kind>> } = {
  'static-curve': StaticCurveCard,
  'transfer-curve': TransferCurveCard,
  sibilance: SplitCard,
  'level-change': LevelCard,
}

/** The small picture of a stage on its card; the sentence beside it says what it shows. */
export const CardPicture = memo(({ stage, index }: CardPictureProps) => {
  const colour = useStageColour(stage.id)
  const picture = useMemo(() => pictureOf(stage), [stage])
  return (
    <svg
      className={stage.on ? styles.on : styles.off}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      style={{ '--stage': colour }}
      aria-hidden="true"
    >
      {picture ? <Settings picture={picture} stage={stage} index={index} /> : <Response stage={stage} />}
    </svg>
  )
})

function Settings<Kind extends StagePictureKind>(
  props: PartProps<Kind> & { readonly picture: { readonly kind: Kind } },
) {
  const Component: ComponentType<PartProps<Kind>> = components[props.picture.kind]
  return <Component {...props} />
}

/** The response of what filters. */
function Response({ stage }: { stage: StageDoc }) {
  const sampleRate = useSampleRate()
  const path = useMemo(() => responsePath({ ...stage, on: true }, sampleRate), [stage, sampleRate])
  return (
    <>
      <path className={styles.ghost} d={`M0,${HEIGHT / 2}H${WIDTH}`} />
      <path className={styles.line} d={path} />
    </>
  )
}

/** A bar up or down, for what is the same at every frequency. */
function LevelCard({ stage }: PartProps<'level-change'>) {
  const sampleRate = useSampleRate()
  const [db = 0] = magnitudeDb({ ...stage, on: true }, [LEVEL_HZ], sampleRate)
  const y = Math.min(HEIGHT, Math.max(0, gainY(db, LEVEL_RANGE_DB)))
  return (
    <>
      <path className={styles.ghost} d={`M0,${HEIGHT / 2}H${WIDTH}`} />
      <rect
        className={styles.bar}
        x={WIDTH * 0.42}
        width={WIDTH * 0.16}
        y={Math.min(y, HEIGHT / 2)}
        height={Math.abs(y - HEIGHT / 2)}
      />
    </>
  )
}

const LEVEL_HZ = 1000
const LEVEL_RANGE_DB = 24

/** The bend of a waveshaper beside a straight line. */
function TransferCurveCard({ picture: { outputAt } }: PartProps<'transfer-curve'>) {
  return (
    <>
      <path className={styles.ghost} d={`M0,${HEIGHT - 2}L${WIDTH},2`} />
      <path className={styles.line} d={transferPath(outputAt)} />
    </>
  )
}

/** What lies above the crossover, and how far it is let down at most. */
function SplitCard({ picture: { detection } }: PartProps<'sibilance'>) {
  const split = frequencyX(detection.crossoverHz)
  const top = HEIGHT / 4
  const reduced = top + (Math.min(detection.rangeDb, LEVEL_RANGE_DB) / LEVEL_RANGE_DB) * (HEIGHT - top - 4)
  return (
    <>
      <rect className={styles.above} x={split} y={0} width={WIDTH - split} height={HEIGHT} />
      <path className={styles.ghost} d={`M${split},${top}H${WIDTH}`} />
      <path className={styles.line} d={`M0,${top}H${split}V${reduced}H${WIDTH}`} />
    </>
  )
}

function useSampleRate(): number {
  return useTake(({ take }) => take?.sound.sampleRate ?? 48_000)
}
