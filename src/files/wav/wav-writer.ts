import { frameCount, type Sound } from '../../core'
import { TriangularNoise } from '../../core/primitives'
import { FileError } from '../file-error'
import { isOnGrid, quantise } from './quantise'
import { EXTENSIBLE_FMT_BYTES, FMT_BYTES, FORMAT_TAG, SUB_FORMAT_TAIL } from './wav-format'

/** Sample formats of a delivered file: 16- and 24-bit integer, 32-bit float. */
export type WavFormat = 'pcm16' | 'pcm24' | 'float32'

export interface WavOptions {
  /**
   * Seed of triangular dither for the integer formats; left out: no dither. The same seed gives the same file. A channel
   * whose samples are whole steps of the format already is not dithered: it is written as it is.
   */
  readonly ditherSeed?: number
  /** Name to report errors under. */
  readonly fileName?: string
}

export interface EncodedWav {
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Samples beyond what the integer format holds, cut to its limits; always 0 for float32. */
  readonly clippedSamples: number
  /** Whether dither was added to any channel. */
  readonly isDithered: boolean
}

interface Layout {
  readonly tag: number
  readonly bits: number
}

const LAYOUTS: Readonly<Record<WavFormat, Layout>> = {
  pcm16: { tag: FORMAT_TAG.pcm, bits: 16 },
  pcm24: { tag: FORMAT_TAG.pcm, bits: 24 },
  float32: { tag: FORMAT_TAG.float, bits: 32 },
}

/** Bytes that a RIFF size field can count, 2^32 - 1. */
const MOST_RIFF_BYTES = 2 ** 32 - 1

/**
 * A whole WAV file holding `sound`. Integer formats divide full scale into 2^(bits-1) steps, as browsers do when
 * they decode, so a file of the same depth comes back sample for sample, dither or not; float32
 * keeps every bit, also above full scale.
 *
 * The header is the plain one for 16 bits and up to two channels, and WAVE_FORMAT_EXTENSIBLE beyond, as
 * Microsoft's "Multiple Channel Audio Data and WAVE Files" asks. Float files carry a 'fact' chunk, which the
 * specification requires of everything that is not PCM.
 *
 * @throws FileError 'too-long' when the file would pass the 4 GiB that a RIFF header can count
 */
export function encodeWav(sound: Sound, format: WavFormat, options: WavOptions = {}): EncodedWav {
  const { tag, bits } = LAYOUTS[format]
  const channels = sound.channels.length
  const frames = frameCount(sound)
  const blockAlign = (channels * bits) / 8
  const dataBytes = frames * blockAlign
  const extensible = bits > 16 || channels > 2
  const fmtBytes = extensible ? EXTENSIBLE_FMT_BYTES : FMT_BYTES
  const headerBytes = 12 + 8 + fmtBytes + (tag === FORMAT_TAG.float ? 12 : 0) + 8
  const fileBytes = headerBytes + dataBytes + (dataBytes % 2)
  if (fileBytes - 8 > MOST_RIFF_BYTES) {
    throw new FileError(
      'too-long',
      options.fileName ?? 'The file',
      `would be ${(fileBytes / 1e9).toFixed(1)} GB, and a WAV file ends at 4.3 GB`,
      'Choose fewer bits, or deliver it in parts.',
    )
  }

  const bytes = new Uint8Array(fileBytes)
  const view = new DataView(bytes.buffer)
  let at = 0
  const text = (four: string) => {
    for (let i = 0; i < 4; i++) bytes[at + i] = four.charCodeAt(i)
    at += 4
  }
  const u16 = (value: number) => {
    view.setUint16(at, value, true)
    at += 2
  }
  const u32 = (value: number) => {
    view.setUint32(at, value, true)
    at += 4
  }

  text('RIFF')
  u32(fileBytes - 8)
  text('WAVE')
  text('fmt ')
  u32(fmtBytes)
  u16(extensible ? FORMAT_TAG.extensible : tag)
  u16(channels)
  u32(sound.sampleRate)
  u32(sound.sampleRate * blockAlign)
  u16(blockAlign)
  u16(bits)
  if (extensible) {
    u16(EXTENSIBLE_FMT_BYTES - FMT_BYTES - 2)
    u16(bits)
    u32(channelMask(channels))
    u16(tag)
    bytes.set(SUB_FORMAT_TAIL, at)
    at += SUB_FORMAT_TAIL.length
  }
  if (tag === FORMAT_TAG.float) {
    text('fact')
    u32(4)
    u32(frames)
  }
  text('data')
  u32(dataBytes)

  const { ditherSeed } = options
  const noise = ditherSeed === undefined ? null : new TriangularNoise(ditherSeed)
  let isDithered = false
  let clippedSamples = 0
  for (const [channel, samples] of sound.channels.entries()) {
    const start = at + (channel * bits) / 8
    if (tag === FORMAT_TAG.float) {
      for (let i = 0; i < frames; i++) view.setFloat32(start + i * blockAlign, samples[i] ?? 0, true)
    } else {
      const dither = noise && !isOnGrid(samples, bits) ? noise : undefined
      isDithered ||= dither !== undefined
      const steps = quantise(samples, bits, dither)
      clippedSamples += steps.clippedSamples
      writeSteps(bytes, start, blockAlign, steps.samples, bits)
    }
  }
  return { bytes, clippedSamples, isDithered }
}

/** Writes integers little-endian, the first at byte `start`, each `blockAlign` bytes after the one before. */
function writeSteps(
  bytes: Uint8Array,
  start: number,
  blockAlign: number,
  steps: Int32Array,
  bits: number,
): void {
  for (let i = 0, at = start; i < steps.length; i++, at += blockAlign) {
    const step = steps[i] ?? 0
    bytes[at] = step
    bytes[at + 1] = step >> 8
    if (bits === 24) bytes[at + 2] = step >> 16
  }
}

/** Speaker bits: front centre for mono, front left and right for stereo, none assigned beyond. */
function channelMask(channels: number): number {
  if (channels === 1) return 0x4
  return channels === 2 ? 0x3 : 0
}
