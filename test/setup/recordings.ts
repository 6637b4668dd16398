import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Sound } from '../../src/core/sound/sound'

const FOLDER = '/usr/share/sounds/alsa'

export interface Recording {
  readonly name: string
  readonly sound: Sound
}

/**
 * The recorded voices (and one noise) of Debian's package alsa-utils, 48 kHz mono.
 * @throws Error saying what to install when they are missing
 */
export function recordings(): Recording[] {
  const names = existsSync(FOLDER) ? readdirSync(FOLDER).filter((name) => name.endsWith('.wav')) : []
  if (names.length === 0) {
    throw new Error(`No recordings in ${FOLDER}. Install them: apt-get install alsa-utils (Debian, Ubuntu).`)
  }
  return names.map((name) => ({ name, sound: readPcm16(readFileSync(join(FOLDER, name))) }))
}

/** Reads a 16-bit PCM WAV file; enough for these recordings. */
function readPcm16(bytes: Buffer): Sound {
  let channelCount = 0
  let sampleRate = 0
  for (let at = 12; at + 8 <= bytes.length; ) {
    const id = bytes.toString('latin1', at, at + 4)
    const size = bytes.readUInt32LE(at + 4)
    const body = at + 8
    if (id === 'fmt ') {
      channelCount = bytes.readUInt16LE(body + 2)
      sampleRate = bytes.readUInt32LE(body + 4)
      if (bytes.readUInt16LE(body) !== 1 || bytes.readUInt16LE(body + 14) !== 16) break
    }
    if (id === 'data') {
      const frames = Math.floor(Math.min(size, bytes.length - body) / (2 * channelCount))
      const channels = Array.from({ length: channelCount }, (_, channel) =>
        Float32Array.from(
          { length: frames },
          (_, i) => bytes.readInt16LE(body + 2 * (i * channelCount + channel)) / 32_768,
        ),
      )
      return { sampleRate, channels }
    }
    at = body + size + (size % 2)
  }
  throw new Error('not a 16-bit PCM WAV file')
}
