import type { Sound } from '../../core'
import { FileError } from '../file-error'
import { A_LAW, MU_LAW } from './companding'
import { readWavHeader, type WavFacts } from './wav-header'

export interface ReadWav {
  readonly sound: Sound
  readonly facts: WavFacts
}

/** Fills `out` with one channel's samples, the first at byte `start`, each `stride` bytes after the one before. */
type SampleReader = (view: DataView, start: number, stride: number, out: Float32Array) => void

/** Reads codes of one byte by a table of what each stands for. */
function codesOf(table: Float32Array): SampleReader {
  return (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = table[view.getUint8(at)] ?? 0
  }
}

/** By coding and bytes of one sample. Integers are scaled so that 2^(bits-1) is full scale, 1. */
const READERS: Readonly<Record<string, SampleReader>> = {
  pcm1: (view, start, stride, out) => {
    // Words of up to 8 bits are unsigned, all wider ones signed (Microsoft/IBM specification, "Data Format").
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = (view.getUint8(at) - 128) / 128
  },
  pcm2: (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = view.getInt16(at, true) / 2 ** 15
  },
  pcm3: (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) {
      out[i] = (view.getUint16(at, true) + view.getInt8(at + 2) * 2 ** 16) / 2 ** 23
    }
  },
  pcm4: (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = view.getInt32(at, true) / 2 ** 31
  },
  float4: (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = view.getFloat32(at, true)
  },
  float8: (view, start, stride, out) => {
    for (let i = 0, at = start; i < out.length; i++, at += stride) out[i] = view.getFloat64(at, true)
  },
  'a-law1': codesOf(A_LAW),
  'mu-law1': codesOf(MU_LAW),
}

/**
 * Reads a whole WAV file: integer PCM of 8 to 32 bits, float of 32 or 64 bits, A-law and mu-law. Samples are given as they stand,
 * so a float file may bring NaN, Infinity or values above full scale; 32-bit integers and 64-bit floats are rounded
 * to single precision. Narrow words are taken to be left-justified, as the extensible format prescribes.
 *
 * @param bytes the file
 * @param fileName for messages
 * @throws FileError as {@link readWavHeader} does, and 'unsupported' for any other coding
 */
export function readWav(bytes: Uint8Array, fileName: string): ReadWav {
  const facts = readWavHeader(bytes, fileName)
  const read = READERS[`${facts.coding}${facts.bytesPerSample}`]
  if (!read || facts.bytesPerSample === null || facts.frames === null) {
    throw new FileError(
      'unsupported',
      fileName,
      `codes its sound in a way that is not supported (WAV format ${facts.formatTag})`,
      'Export it as WAV with 16, 24 or 32 bits.',
    )
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset + facts.dataOffset, facts.dataBytes)
  const channels: Float32Array[] = []
  for (let channel = 0; channel < facts.channels; channel++) {
    const samples = new Float32Array(facts.frames)
    read(view, channel * facts.bytesPerSample, facts.channels * facts.bytesPerSample, samples)
    channels.push(samples)
  }
  return { sound: { sampleRate: facts.sampleRate, channels }, facts }
}
