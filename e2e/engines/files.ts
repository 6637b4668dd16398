import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Path of one of the browser tests' takes. */
export function takeFile(name: string): string {
  return fileURLToPath(new URL(`../takes/${name}`, import.meta.url))
}

/**
 * One period of 1 kHz at 0 dBm0, sampled at 8 kHz: ITU-T G.711, table 5, the A-law character signals. From memory.
 */
const A_LAW_PERIOD = [0x34, 0x21, 0x21, 0x34, 0xb4, 0xa1, 0xa1, 0xb4]
const A_LAW_RATE = 8000
/** Of the format's tag: A-law (RFC 2361, WAVE_FORMAT_ALAW). */
const A_LAW_TAG = 6

/** Writes two seconds of a 1 kHz tone as an A-law WAV file and returns its path. */
export function writeALawFile(folder: string): string {
  const samples = Buffer.from(Array.from({ length: A_LAW_RATE / 4 }, () => A_LAW_PERIOD).flat())
  const header = Buffer.alloc(44)
  header.write('RIFF', 0)
  header.writeUInt32LE(36 + samples.length, 4)
  header.write('WAVEfmt ', 8)
  header.writeUInt32LE(16, 16)
  header.writeUInt16LE(A_LAW_TAG, 20)
  header.writeUInt16LE(1, 22)
  header.writeUInt32LE(A_LAW_RATE, 24)
  header.writeUInt32LE(A_LAW_RATE, 28)
  header.writeUInt16LE(1, 32)
  header.writeUInt16LE(8, 34)
  header.write('data', 36)
  header.writeUInt32LE(samples.length, 40)
  const path = join(folder, 'tone-a-law.wav')
  writeFileSync(path, Buffer.concat([header, samples]))
  return path
}
