import type { Biquad } from '../dsp/biquad'
import { halfAngleSine, magnitudeSquared } from '../dsp/biquad'
import { BiquadCascade } from '../dsp/biquad-cascade'
import { type BandSettings, bandParameters, bandSections, type EqualiserDesign, MAX_SECTIONS } from './band'
import { describeBands } from './band-words'
import {
  type Processor,
  type ProcessorHost,
  type StageDefinition,
  settingFadeFrames,
} from './stage-definition'

/** Settings of the equaliser. */
export interface EqualiserSettings {
  readonly bands: readonly BandSettings[]
  readonly design: EqualiserDesign
}

const MAX_BANDS = 12

/** The quietest a magnitude is reported, dB: at the centre of a notch there is nothing left to take a log of. */
const FLOOR_POWER = 1e-40

class EqualiserProcessor implements Processor<EqualiserSettings> {
  readonly latencyFrames = 0
  private readonly cascade: BiquadCascade

  constructor(
    settings: EqualiserSettings,
    private readonly host: ProcessorHost,
  ) {
    this.cascade = new BiquadCascade(MAX_BANDS * MAX_SECTIONS, host.channelCount, settingFadeFrames(host))
    this.set(settings)
  }

  set(settings: EqualiserSettings): void {
    this.cascade.set(sectionsOf(settings, this.host.sampleRate))
  }

  process(channels: readonly Float32Array[], frames: number): void {
    this.cascade.process(channels, frames)
  }

  reset(): void {
    this.cascade.reset()
  }
}

/** All bands in series. */
function sectionsOf({ bands, design }: EqualiserSettings, sampleRate: number): Biquad[] {
  return bands.flatMap((band) => bandSections(band, design, sampleRate))
}

/**
 * Magnitude of one band in dB, 0 where it is switched off; never below -400 dB.
 * Worked out from the very coefficients that filter the sound.
 */
export function bandMagnitudeDb(
  band: BandSettings,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
  design: EqualiserDesign,
): Float64Array {
  return sectionsMagnitudeDb(bandSections(band, design, sampleRate), frequenciesHz, sampleRate)
}

function sectionsMagnitudeDb(
  sections: readonly Biquad[],
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
): Float64Array {
  return Float64Array.from(frequenciesHz, (frequencyHz) => {
    const phi = halfAngleSine(frequencyHz, sampleRate)
    let power = 1
    for (const section of sections) power *= magnitudeSquared(section, phi)
    return 10 * Math.log10(Math.max(power, FLOOR_POWER))
  })
}

/** The equaliser. */
export const equaliser: StageDefinition<EqualiserSettings> = {
  label: 'Equaliser',
  purpose: 'Turns parts of the spectrum up or down.',
  parameters: {
    bands: {
      type: 'list',
      label: 'Bands',
      itemLabel: 'Band',
      item: bandParameters,
      maxItems: MAX_BANDS,
      default: [{ on: true, shape: 'bell', frequencyHz: 1000, gainDb: 0, q: 1, slopeDbPerOctave: 12 }],
      help: 'Each band shapes one part of the spectrum; together they add up in dB.',
    },
    design: {
      type: 'choice',
      label: 'Design',
      options: [
        { value: 'matched', label: 'matched to analogue' },
        { value: 'bilinear', label: 'bilinear' },
      ],
      default: 'matched',
      help: 'Matched keeps the analogue shape near the top of the range; bilinear squeezes it against half the sample rate.',
    },
  },
  reducesGain: false,
  createProcessor: (settings, host) => new EqualiserProcessor(settings, host),
  magnitudeDb: (settings, frequenciesHz, sampleRate) =>
    sectionsMagnitudeDb(sectionsOf(settings, sampleRate), frequenciesHz, sampleRate),
  describe: ({ bands }) => describeBands(bands),
}
