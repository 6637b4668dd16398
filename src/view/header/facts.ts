import { durationSeconds, type Measures, plain } from '../../core'
import type { Take } from '../../session/take/take-store'
import { DIGITAL_SILENCE, isDigitalSilence, NOT_MEASURABLE } from '../words/missing-figures'
import { printTime } from '../words/time-text'

/** A figure of the take, in the few words of its line. */
export interface Fact {
  readonly words: string
  /** What it is, in full. */
  readonly title: string
  /** Something to be looked into. */
  readonly worth?: boolean
  /** It happens at places of the take, of which the first can be gone to. */
  readonly hasPlace?: boolean
}

/** What the take is: length, rate, channels, and what its file says of itself. */
export function takeFacts({ sound, header }: Take): readonly Fact[] {
  const channels = sound.channels.length === 1 ? 'mono' : 'stereo'
  const file = header
    ? [header.bitsPerSample ? `${header.bitsPerSample}-bit ${header.container}` : header.container]
    : []
  return [
    { words: printTime(durationSeconds(sound)), title: 'Length' },
    { words: `${sound.sampleRate / 1000} kHz`, title: 'Sample rate' },
    { words: channels, title: 'Channels' },
    ...file.map((words) => ({ words, title: 'File' })),
  ]
}

/** An offset below this, of full scale, is no fault: -60 dB. (Common practice, no source.) */
const MUCH_DC = 0.001

/** What was measured of the take, in the order in which it is asked about; an offset only where there is one. */
export function measureFacts(measures: Measures): readonly Fact[] {
  const { truePeakDbtp, integratedLufs, noiseFloorDbfs, clippedSamples, dcOffset } = measures
  const dc = Math.max(0, ...dcOffset.map(Math.abs))
  const floor = isDigitalSilence(noiseFloorDbfs) ? DIGITAL_SILENCE : figure(noiseFloorDbfs, 0, 'dBFS')
  const facts: Fact[] = [
    { words: `peak ${figure(truePeakDbtp, 1, 'dBTP')}`, title: 'True peak of the unprocessed take' },
    {
      words: integratedLufs === null ? `loudness ${NOT_MEASURABLE}` : figure(integratedLufs, 1, 'LUFS'),
      title: 'Integrated loudness of the unprocessed take',
    },
    { words: `floor ${floor}`, title: 'Noise floor: the level in the pauses' },
    {
      words: `clipped ${clippedSamples}`,
      title: 'Clipped samples: runs of three or more at full scale',
      worth: clippedSamples > 0,
      hasPlace: clippedSamples > 0,
    },
  ]
  if (dc > MUCH_DC)
    facts.push({ words: `DC ${plain(dc * 100, 2)} %`, title: 'DC offset of full scale', worth: true })
  return facts
}

/** Why the output has to be looked into; null while its true peak is not above full scale, or not known. */
export function outputFact(truePeakDbtp: number | null): Fact | null {
  if (truePeakDbtp === null || truePeakDbtp <= 0) return null
  return {
    words: `output +${plain(truePeakDbtp, 1)} dBTP`,
    title: 'The output of the chain goes above full scale: a fixed-point file would clip',
    worth: true,
  }
}

function figure(value: number | null, digits: number, unit: string): string {
  return value === null ? NOT_MEASURABLE : `${plain(value, digits)} ${unit}`
}
