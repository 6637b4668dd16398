import type { CodedSpan } from './coded-span'

/** Frames by which an MP3 decoder delays, with the one of its overlap (LAME technical FAQ; LAME, encoder.h). */
export const MP3_DECODER_DELAY_FRAMES = 529

/** The longest delay of an encoder that does not state it (1160, the longest in the LAME technical FAQ), decoded. */
export const MP3_MOST_DELAY_FRAMES = 1160 + MP3_DECODER_DELAY_FRAMES

/** Bytes of the header of an ID3v2 tag. */
export const ID3_HEADER_BYTES = 10
/** Bytes of the longest frame: 320 kbit/s at 32 kHz, and one of padding (ISO/IEC 11172-3). */
export const MOST_MP3_FRAME_BYTES = 1441

/** From the marker of the tag to its parts: the flags, and from the name of the encoder to its delays. */
const FLAGS_OFFSET = 4
const FIELDS_OFFSET = 8
const DELAYS_OFFSET = 21
/** Bytes of each field that may stand ahead of the name of the encoder, by the bit that announces it. */
const FIELD_BYTES: ReadonlyMap<number, number> = new Map([
  [1, 4],
  [2, 4],
  [4, 100],
  [8, 4],
])
const FRAMES_FLAG = 1

/** Encoders that state their delays behind the tag, by the first letters of their names. */
const STATING = ['LAME', 'Lavf', 'Lavc']

/**
 * Where the first frame of an MP3 file begins: behind an ID3v2 tag, which may hold pictures.
 *
 * @param head at least the first {@link ID3_HEADER_BYTES} bytes of the file
 */
export function mp3FrameOffset(head: Uint8Array): number {
  if (head.length < ID3_HEADER_BYTES || textAt(head, 0, 3) !== 'ID3') return 0
  // ID3v2.4, 3.1: four bytes of seven bits; a flag announces a footer as long as the header.
  const size = [6, 7, 8, 9].reduce((sum, at) => sum * 128 + ((head[at] ?? 0) & 0x7f), 0)
  const hasFooter = ((head[5] ?? 0) & 0x10) !== 0
  return ID3_HEADER_BYTES + size + (hasFooter ? ID3_HEADER_BYTES : 0)
}

/**
 * Reads where the sound lies from the tag in the first frame of an MP3 file: the number of frames ("Xing" or "Info"
 * header), and behind the name of the encoder its delay and padding, 12 bits each (LAME, "Mp3 Info Tag rev 1").
 *
 * @param frame the file from its first frame on, the whole of that frame
 * @returns null where there is no such tag
 */
export function readMp3Span(frame: Uint8Array): CodedSpan | null {
  const [sync = 0, version = 0, , mode = 0] = frame
  // ISO/IEC 11172-3, 2.4.1.3: eleven bits of sync, two of version (11: MPEG-1), two of layer (01: layer III).
  if (sync !== 0xff || (version & 0xe0) !== 0xe0 || (version & 0x06) !== 0x02) return null
  const isMpeg1 = (version & 0x18) === 0x18
  const isMono = (mode & 0xc0) === 0xc0
  const sideBytes = isMpeg1 ? (isMono ? 17 : 32) : isMono ? 9 : 17
  const tag = 4 + sideBytes
  const marker = textAt(frame, tag, 4)
  if (marker !== 'Xing' && marker !== 'Info') return null
  const view = new DataView(frame.buffer, frame.byteOffset, frame.byteLength)
  const flags = frame[tag + FLAGS_OFFSET + 3] ?? 0
  let encoder = tag + FIELDS_OFFSET
  for (const [flag, bytes] of FIELD_BYTES) if (flags & flag) encoder += bytes
  const delays = encoder + DELAYS_OFFSET
  if ((flags & FRAMES_FLAG) === 0 || delays + 3 > frame.length) return null
  if (!STATING.includes(textAt(frame, encoder, 4))) return null
  const packetFrames = isMpeg1 ? 1152 : 576
  const codedFrames = view.getUint32(tag + FIELDS_OFFSET) * packetFrames
  const delayFrames = view.getUint16(delays) >> 4
  const paddingFrames = view.getUint16(delays + 1) & 0xfff
  const frames = codedFrames - delayFrames - paddingFrames
  if (frames <= 0) return null
  return {
    codedFrames,
    packetFrames,
    delayFrames,
    decoderDelayFrames: MP3_DECODER_DELAY_FRAMES,
    frames,
    toleranceFrames: 0,
  }
}

function textAt(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length))
}
