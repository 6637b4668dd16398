import { playBacking } from './backing/backing'
import { faultLabels } from './faults/fault-sizes'
import { spoil } from './faults/faults'
import type { DemoTake, PhonemeLabel, PhraseLabel } from './faults/labels'
import { layOut, type Segment } from './song/layout'
import { phoneme } from './song/phonemes'
import { type Phrase, song } from './song/score'
import { sampleRate } from './song/track'
import { type CleanVoice, singCleanly } from './voice/voice'

const seeds = { layout: 1, voice: 101, faults: 201 } as const

/** The song of the demo as it is sung before anything is wrong with it. */
export function cleanDemo(): { readonly segments: readonly Segment[]; readonly voice: CleanVoice } {
  const segments = layOut(song, seeds.layout)
  return { segments, voice: singCleanly(segments, song.phrases, song.durationSeconds, seeds.voice) }
}

/**
 * The built-in take: a short song of our own, sung by a synthesiser and spoilt in known ways, with its
 * backing and labels. Vocal mono and backing stereo, 48 kHz, equally long. The same samples on every call.
 */
export function demoTake(): DemoTake {
  const { segments, voice } = cleanDemo()
  const phrases = song.phrases.map((phrase, index) => phraseLabel(phrase, index, segments))
  return {
    title: song.title,
    vocal: { sampleRate, channels: [spoil(voice, segments, seeds.faults)] },
    backing: playBacking(song),
    labels: { phonemes: segments.map(phonemeLabel), phrases, faults: faultLabels(segments, phrases) },
  }
}

function phonemeLabel({ symbol, startSeconds, endSeconds, frequencyHz }: Segment): PhonemeLabel {
  const label = { symbol, kind: phoneme(symbol).kind, startSeconds, endSeconds }
  return frequencyHz === undefined ? label : { ...label, frequencyHz }
}

function phraseLabel({ words }: Phrase, index: number, segments: readonly Segment[]): PhraseLabel {
  const sung = segments.filter(
    ({ phrase, symbol }) => phrase === index && symbol !== 'breath' && symbol !== 'silence',
  )
  return { words, startSeconds: sung[0]?.startSeconds ?? 0, endSeconds: sung.at(-1)?.endSeconds ?? 0 }
}
