import type { FrameRange } from '../../core'

/** Where the sound of a lossy file lies in what a decoder makes of its packets. */
export interface CodedSpan {
  /** Frames that all packets decode to. */
  readonly codedFrames: number
  /** Frames of one packet. */
  readonly packetFrames: number
  /** Frames that the encoder put ahead of the sound. */
  readonly delayFrames: number
  /** Frames by which a decoder itself delays the sound. */
  readonly decoderDelayFrames: number
  /** Frames of sound. */
  readonly frames: number
  /** How far from `frames` a decoder may end that goes by the file: some state lengths in coarse units of time. */
  readonly toleranceFrames: number
}

/** What cannot be told of a decoded sound. */
export interface TimingDoubt {
  /** It may begin so much later than in the file, ms. */
  readonly mostLateMs: number
  /** So much is missing, probably at its end, ms. */
  readonly missingMs: number
}

/** A packet that carries the tag of an MP3 decodes to silence where a decoder takes it for sound. */
const TAG_PACKETS = 1

/**
 * Finds the sound in what a decoder put out, by how many frames there are: decoders remove all of the delays, some of
 * them or none. (Measured with one MP3 file: Chromium 156 all, Firefox 153 the decoder's own, WebKitGTK 2.50 none.)
 *
 * @returns null where the number fits no way of decoding, or ways that differ in where the sound begins
 */
export function soundSpan(decodedFrames: number, span: CodedSpan): FrameRange | null {
  const { codedFrames, packetFrames, delayFrames, decoderDelayFrames, frames, toleranceFrames } = span
  const delays = delayFrames + decoderDelayFrames
  if (Math.abs(decodedFrames - frames) <= toleranceFrames) return { from: 0, to: decodedFrames }
  const ways: readonly { readonly count: number; readonly from: number }[] = [
    { count: codedFrames, from: delays },
    { count: codedFrames + TAG_PACKETS * packetFrames, from: TAG_PACKETS * packetFrames + delays },
    { count: codedFrames - decoderDelayFrames, from: delayFrames },
    { count: codedFrames - delays, from: 0 },
    { count: frames + delays, from: delays },
    { count: frames + delayFrames, from: delayFrames },
  ]
  const starts = new Set(ways.filter(({ count }) => count === decodedFrames).map(({ from }) => from))
  const [from] = starts
  if (from === undefined || starts.size > 1) return null
  return { from, to: Math.min(from + frames, decodedFrames) }
}

/** What cannot be told of a sound whose {@link soundSpan} is unknown. */
export function doubtOf(decodedFrames: number, span: CodedSpan, sampleRate: number): TimingDoubt {
  const ms = (frames: number) => (1000 * frames) / sampleRate
  const { delayFrames, decoderDelayFrames, packetFrames, frames } = span
  const mostLate = decoderDelayFrames > 0 ? TAG_PACKETS * packetFrames + decoderDelayFrames : 0
  return {
    mostLateMs: ms(mostLate + delayFrames),
    missingMs: ms(Math.max(0, frames - decodedFrames)),
  }
}
