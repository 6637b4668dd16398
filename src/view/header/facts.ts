import { durationSeconds, type Measures, plain } from '../../core'
import type { Take } from '../../session/take/take-store'
import { DIGITAL_SILENCE, isDigitalSilence, NOT_MEASURABLE } from '../words/missing-figures'
import { printTime } from '../words/time-text'

/** A figure of the take with its name. */
export interface Fact {
  readonly label: string
  readonly value: string
  /** Something to be looked into. */
  readonly worth?: boolean
}

/** What the take is: length, rate, channels, and what its file says of itself. */
export function takeFacts({ sound, header }: Take): readonly string[] {
  const channels = sound.channels.length === 1 ? 'mono' : 'stereo'
  const file = header
    ? [header.bitsPerSample ? `${header.bitsPerSample}-bit ${header.container}` : header.container]
    : []
  return [printTime(durationSeconds(sound)), `${sound.sampleRate / 1000} kHz`, channels, ...file]
}

/** An offset below this, of full scale, is no fault: -60 dB. (Common practice, no source.) */
const MUCH_DC = 0.001

/** What was measured of the take, in the order in which it is asked about. */
export function measureFacts(measures: Measures): readonly Fact[] {
  const dc = Math.max(0, ...measures.dcOffset.map(Math.abs))
  return [
    { label: 'Peak', value: figure(measures.truePeakDbtp, 'dBTP') },
    { label: 'Loudness', value: figure(measures.integratedLufs, 'LUFS') },
    { label: 'Noise floor', value: noiseFloor(measures.noiseFloorDbfs) },
    {
      label: 'Clipped samples',
      value: String(measures.clippedSamples),
      worth: measures.clippedSamples > 0,
    },
    { label: 'DC', value: `${plain(dc * 100, 2)} %`, worth: dc > MUCH_DC },
  ]
}

function noiseFloor(dbfs: number | null): string {
  return isDigitalSilence(dbfs) ? DIGITAL_SILENCE : figure(dbfs, 'dBFS')
}

function figure(value: number | null, unit: string): string {
  return value === null ? NOT_MEASURABLE : `${plain(value, 1)} ${unit}`
}
