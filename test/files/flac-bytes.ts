import { ascii, type Bytes, concat } from './wav-bytes'

export interface StreamInfo {
  readonly sampleRate: number
  readonly channels: number
  readonly bits: number
  readonly frames: number
}

/** The head of a FLAC file: marker and STREAMINFO, put together bit by bit as RFC 9639, section 8.2 lays them out. */
export function flacHead({ sampleRate, channels, bits, frames }: StreamInfo): Bytes {
  const field = (value: number, width: number) => value.toString(2).padStart(width, '0')
  const streamInfo = [
    field(4096, 16),
    field(4096, 16),
    field(0, 24),
    field(0, 24),
    field(sampleRate, 20),
    field(channels - 1, 3),
    field(bits - 1, 5),
    field(frames, 36),
    field(0, 128),
  ].join('')
  const block = `1${field(0, 7)}${field(streamInfo.length / 8, 24)}${streamInfo}`
  const octets = block.match(/.{8}/g) ?? []
  return concat(
    ascii('fLaC'),
    Uint8Array.from(octets, (octet) => Number.parseInt(octet, 2)),
  )
}
