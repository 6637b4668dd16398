import type { Sound } from '../../core'
import { dbToGain } from '../../core'
import { rms } from '../song/levels'
import { noteFrequencyHz } from '../song/note'
import { beatSeconds, type Chord, type Song } from '../song/score'
import { sampleRate } from '../song/track'
import { addDrum, addStroke, addTone, type StereoBuffer } from './instruments'

/** RMS of the left channel, dBFS; measured to give an integrated loudness of about -20 LUFS. */
const levelDbfs = -21
const keys = [1, 0.28, 0.14, 0.05] as const
const bass = [1, 0.45, 0.2, 0.08] as const

/**
 * The band: soft keys, a bass and light percussion, in stereo. It stays below about 2 kHz but for the brushes,
 * and leaves that room to the voice. The same samples on every call.
 */
export function playBacking(song: Song): Sound {
  const frames = Math.round(song.durationSeconds * sampleRate)
  const buffer: StereoBuffer = [new Float64Array(frames), new Float64Array(frames)]
  const beat = beatSeconds(song)
  let start = song.leadInBeats * beat
  playCountIn(buffer, song)
  for (const chord of song.chords) {
    playChord(buffer, chord, start, beat)
    playPercussion(buffer, chord, start, beat)
    start += chord.beats * beat
  }
  const scale = dbToGain(levelDbfs) / rms(buffer[0])
  const channels = buffer.map((samples) => new Float32Array(samples.map((sample) => sample * scale)))
  return { sampleRate, channels }
}

function playCountIn(buffer: StereoBuffer, song: Song): void {
  for (let count = 0; count < song.leadInBeats; count += 1) {
    const startSeconds = count * beatSeconds(song)
    addStroke(buffer, { startSeconds, gain: 0.12, pan: 0, decaySeconds: 0.02 })
  }
}

function playChord(buffer: StereoBuffer, chord: Chord, start: number, beat: number): void {
  for (let at = 0; at < chord.beats; at += 2) {
    chord.notes.forEach((note, index) => {
      addTone(buffer, {
        frequencyHz: noteFrequencyHz(note),
        startSeconds: start + at * beat + 0.012 * index,
        lengthSeconds: 2 * beat,
        gain: at === 0 ? 0.2 : 0.15,
        pan: index - 1,
        partials: keys,
        decaySeconds: 1.1,
      })
    })
    for (const [delay, length, gain] of [
      [0, 1.4, 0.4],
      [1.5, 0.45, 0.28],
    ] as const) {
      addTone(buffer, {
        frequencyHz: noteFrequencyHz(chord.bass),
        startSeconds: start + (at + delay) * beat,
        lengthSeconds: length * beat,
        gain,
        pan: 0,
        partials: bass,
        decaySeconds: 0.7,
      })
    }
  }
}

function playPercussion(buffer: StereoBuffer, chord: Chord, start: number, beat: number): void {
  for (let half = 0; half < 2 * chord.beats; half += 1) {
    const startSeconds = start + (half * beat) / 2
    if (half % 4 === 0) addDrum(buffer, startSeconds, 52, 0.5)
    if (half % 4 === 2) addStroke(buffer, { startSeconds, gain: 0.07, pan: -0.2, decaySeconds: 0.06 })
    else addStroke(buffer, { startSeconds, gain: 0.025, pan: 0.4, decaySeconds: 0.02 })
  }
}
