import { type ScaleLinear, type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale'

/** Space round a plot for the figures of its axes, CSS pixels at the usual text size. */
const MARGIN = { left: 36, right: 40, top: 12, bottom: 24 } as const

const LOWEST_HZ = 20
const HIGHEST_HZ = 20_000

/** Filters have nothing to say above this share of the sample rate. */
const HIGHEST_SHARE_OF_RATE = 0.49

/** Points of every curve: one for each two or three pixels of a wide plot. */
const POINTS = 320

/** The scales of a plot and the frequencies that its curves are worked out at. */
export interface Plot {
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
  readonly margin: Readonly<Record<keyof typeof MARGIN, number>>
  /** The dB scale goes from minus this to plus this. */
  readonly rangeDb: number
  readonly x: ScaleLogarithmic<number, number>
  readonly y: ScaleLinear<number, number>
  readonly frequenciesHz: Float64Array
  /** Where those stand, CSS pixels. */
  readonly frequenciesX: Float64Array
}

/**
 * A plot of so many CSS pixels, up to 20 kHz or to what the sample rate in Hz allows.
 * @param textScale size of text against the usual: room for figures grows with it
 */
export function plotOf(
  width: number,
  height: number,
  rangeDb: number,
  sampleRate: number,
  textScale = 1,
): Plot {
  const margin = {
    left: MARGIN.left * textScale,
    right: MARGIN.right * textScale,
    top: MARGIN.top * textScale,
    bottom: MARGIN.bottom * textScale,
  }
  const highestHz = Math.min(HIGHEST_HZ, HIGHEST_SHARE_OF_RATE * sampleRate)
  const x = scaleLog([LOWEST_HZ, highestHz], [margin.left, width - margin.right]).clamp(true)
  const y = scaleLinear([-rangeDb, rangeDb], [height - margin.bottom, margin.top]).clamp(true)
  const octaves = Math.log2(highestHz / LOWEST_HZ)
  const frequenciesHz = Float64Array.from(
    { length: POINTS },
    (_, i) => LOWEST_HZ * 2 ** ((octaves * i) / (POINTS - 1)),
  )
  return {
    width,
    height,
    textScale,
    margin,
    rangeDb,
    x,
    y,
    frequenciesHz,
    frequenciesX: frequenciesHz.map(x),
  }
}

/** Ticks of the frequency axis that fit, with what is written at them. */
export function frequencyTicks({
  x,
  width,
  textScale,
}: Plot): { readonly hz: number; readonly label: string }[] {
  const [, highestHz = HIGHEST_HZ] = x.domain()
  const all =
    width < NARROW_PX * textScale
      ? [20, 100, 1000, 10_000]
      : [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000]
  return all
    .filter((hz) => hz <= highestHz * 1.001)
    .map((hz) => ({ hz, label: hz < 1000 ? String(hz) : `${hz / 1000}k` }))
}

/** Narrower plots have room for fewer figures, CSS pixels. */
const NARROW_PX = 420

/** Ticks of the dB axis: five. */
export function decibelTicks({ rangeDb }: Plot): number[] {
  return [-1, -0.5, 0, 0.5, 1].map((share) => share * rangeDb)
}
