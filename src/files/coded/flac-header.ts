import { FileError } from '../file-error'
import type { FileHeader } from '../file-header'

/** Bytes of a FLAC file up to the end of its first metadata block, which is always STREAMINFO. */
export const FLAC_HEAD_BYTES = 42

/** Whether `head`, the first bytes of a file, opens a FLAC file. */
export function isFlac(head: Uint8Array): boolean {
  return [0x66, 0x4c, 0x61, 0x43].every((byte, i) => head[i] === byte)
}

/**
 * Reads the STREAMINFO block of a FLAC file (RFC 9639, section 8.2).
 *
 * @param head at least the first {@link FLAC_HEAD_BYTES} bytes of the file
 * @param fileName for messages
 * @throws FileError 'truncated' or 'damaged'
 */
export function readFlacHeader(head: Uint8Array, fileName: string): FileHeader {
  const again = 'Copy or export it again from where it came.'
  if (head.length < FLAC_HEAD_BYTES) {
    throw new FileError('truncated', fileName, 'ends in the middle of its header, before any sound', again)
  }
  const view = new DataView(head.buffer, head.byteOffset, FLAC_HEAD_BYTES)
  // After marker (4), block header (4), block sizes (4) and frame sizes (6): 20 bits rate, 3 bits channels - 1,
  // 5 bits width - 1, 36 bits frames, big-endian throughout.
  const fields = view.getBigUint64(18)
  const sampleRate = Number(fields >> 44n)
  const frames = Number(fields & 0xfffffffffn)
  const isStreamInfo = (view.getUint8(4) & 0x7f) === 0
  if (!isStreamInfo || sampleRate === 0) {
    throw new FileError('damaged', fileName, 'describes its sound in a way that makes no sense', again)
  }
  return {
    container: 'FLAC',
    codec: 'FLAC',
    sampleRate,
    channels: Number((fields >> 41n) & 0x7n) + 1,
    bitsPerSample: Number((fields >> 36n) & 0x1fn) + 1,
    // RFC 9639: 0 means that the length was not known when the header was written.
    frames: frames === 0 ? null : frames,
    durationSeconds: frames === 0 ? null : frames / sampleRate,
  }
}
