import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { test } from '@playwright/test'

const PROGRAM = fileURLToPath(new URL('./reference-loudness.mjs', import.meta.url))

/** Integrated loudness of one channel in LUFS, by `ebur128-wasm`: a general-purpose reference meter. */
export function referenceLoudness(samples: Float32Array, sampleRate: number): number {
  const file = test.info().outputPath('samples.f32')
  writeFileSync(file, new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength))
  const words = ['--experimental-wasm-modules', PROGRAM, file, String(sampleRate)]
  return Number(
    execFileSync(process.execPath, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }),
  )
}
