import { useLayoutEffect, useRef } from 'react'
import { frameCount, type Sound, spectrogramHighestHz } from '../../../core'
import { sideWords } from '../../../session/comparison/side-words'
import { useEvidence, useListen, useTake } from '../../context/app-context'
import { useLook } from '../../hooks/use-look'
import { LaneRow } from '../lanes/lane'
import type { TimeView } from '../time/time-view'
import { SpectrogramCanvas } from './spectrogram-canvas'
import styles from './spectrogram-lane.module.css'
import { frequencyTicks, inkTable } from './spectrogram-scale'
import { tilePieces } from './tile-pieces'
import { useSpectrogram } from './use-spectrogram'

export interface SpectrogramLaneProps {
  readonly view: TimeView
  readonly sampleRate: number
  /** CSS pixels. */
  readonly width: number
  readonly height: number
}

/** Levels by frequency along the take of the side that is heard, as ink on paper. */
export function SpectrogramLane(props: SpectrogramLaneProps) {
  const sound = useTake(({ take }) => take?.sound ?? null)
  return sound && <LaneOf sound={sound} {...props} />
}

function LaneOf({
  sound,
  view,
  sampleRate,
  width,
  height,
}: SpectrogramLaneProps & { readonly sound: Sound }) {
  const seen = useSpectrogram(sound, view, width)
  const side = useListen((state) => state.side)
  const sides = sideWords(useListen((state) => state.scope))
  const label = (
    <>
      <span className={styles.name}>Spectrogram</span>
      <span className={styles.figures} data-figure title={seen.problem ?? undefined}>
        {seen.problem ? 'could not be drawn' : seen.isWhole ? `${sides[side]}, Hz` : 'drawing'}
      </span>
    </>
  )
  const sentence = `Spectrogram of what is seen of the take, ${sides[side]}: level by frequency from 50 Hz to ${spectrogramHighestHz(sampleRate) / 1000} kHz, the more ink the louder${seen.isWhole ? '' : '; not all of it is drawn yet'}.`
  return (
    <LaneRow label={label} ticks={frequencyTicks(sampleRate, height)}>
      <Picture sound={sound} view={view} width={width} height={height} seen={seen} sentence={sentence} />
    </LaneRow>
  )
}

interface PictureProps {
  readonly sound: Sound
  readonly view: TimeView
  readonly width: number
  readonly height: number
  readonly seen: ReturnType<typeof useSpectrogram>
  readonly sentence: string
}

function Picture({ sound, view, width, height, seen, sentence }: PictureProps) {
  const picture = useRef<HTMLCanvasElement>(null)
  const drawing = useRef<SpectrogramCanvas | null>(null)
  const look = useLook()
  // The same ink for both sides, so that they can be compared.
  const peakDbfs = useEvidence(({ evidence }) => evidence?.bypassed.measures.samplePeakDbfs ?? null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another look is another colour
  useLayoutEffect(() => {
    const canvas = picture.current
    const context = canvas?.getContext('2d')
    if (!canvas || !context) return
    canvas.width = Math.max(1, Math.round(width * devicePixelRatio))
    canvas.height = Math.max(1, Math.round(height * devicePixelRatio))
    drawing.current = new SpectrogramCanvas(canvas, context, inkTable(peakDbfs))
  }, [width, height, peakDbfs, look])
  useLayoutEffect(() => {
    const widthPx = picture.current?.width ?? 0
    drawing.current?.draw(tilePieces(view, widthPx, frameCount(sound), seen.hopFrames, seen.levelsOf))
  })
  return (
    <canvas
      ref={picture}
      className={styles.picture}
      role="img"
      aria-label={sentence}
      style={{ width, height }}
    />
  )
}
