// Prints the integrated loudness that ebur128-wasm finds in a file of 32-bit floats, mono.
// A program of its own, because Node imports WebAssembly modules only under a flag of its own:
//   node --experimental-wasm-modules reference-loudness.mjs FILE SAMPLE_RATE
import { readFileSync } from 'node:fs'
import { ebur128_integrated_mono } from 'ebur128-wasm/ebur128_wasm.js'

const [, , file, sampleRate] = process.argv
const bytes = readFileSync(file)
const samples = new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4)
process.stdout.write(String(ebur128_integrated_mono(Number(sampleRate), samples)))
