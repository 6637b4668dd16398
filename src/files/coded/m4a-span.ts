import type { CodedSpan } from './coded-span'

/** Priming that AAC encoders commonly leave ahead of the sound where no edit list says how much (from memory). */
export const AAC_MOST_DELAY_FRAMES = 2112

interface Box {
  readonly type: string
  /** The bytes behind its header. */
  readonly body: DataView
}

/**
 * Reads where the sound lies from the index of an M4A file (its 'moov' box, ISO/IEC 14496-12): the edit list says from
 * which frame on and for how long the packets are to be heard, the table of times how many frames they decode to.
 *
 * @param movie the body of the 'moov' box
 * @param sampleRate of the decoded sound, Hz
 * @returns null where no edit list says it, or in a way that is not a plain beginning and end
 */
export function readM4aSpan(movie: DataView, sampleRate: number): CodedSpan | null {
  const inMovie = boxesIn(movie)
  const movieScale = timescaleOf(find(inMovie, 'mvhd'))
  for (const track of inMovie.filter(({ type }) => type === 'trak')) {
    const inTrack = boxesIn(track.body)
    const inMedia = boxesIn(find(inTrack, 'mdia'))
    if (handlerOf(find(inMedia, 'hdlr')) !== 'soun') continue
    const scale = timescaleOf(find(inMedia, 'mdhd'))
    const edit = onlyEdit(find(boxesIn(find(inTrack, 'edts')), 'elst'))
    const packets = packetTimes(find(boxesIn(find(boxesIn(find(inMedia, 'minf')), 'stbl')), 'stts'))
    if (movieScale === null || scale === null || edit === null || packets === null) return null
    const ratio = sampleRate / scale
    const delayFrames = Math.round(edit.mediaTime * ratio)
    const inTable = Math.round((packets.total - edit.mediaTime) * ratio)
    const inEdit = Math.round((edit.duration * sampleRate) / movieScale)
    // The edit states its length in the movie's unit of time, which may be coarse; the table then has the exact one.
    const unitFrames = Math.ceil(sampleRate / movieScale)
    const isSame = Math.abs(inTable - inEdit) <= unitFrames
    const frames = isSame || edit.duration === 0 ? inTable : inEdit
    if (frames <= 0) return null
    return {
      codedFrames: Math.round(packets.count * packets.longest * ratio),
      packetFrames: Math.round(packets.longest * ratio),
      delayFrames,
      decoderDelayFrames: 0,
      frames,
      toleranceFrames: isSame ? 1 : unitFrames,
    }
  }
  return null
}

/** The body of the 'moov' box of a file; null where there is none, or one too large to be an index of sound. */
export async function readMovie(file: Blob): Promise<DataView | null> {
  let at = 0
  while (at + 8 <= file.size) {
    const head = new DataView(await file.slice(at, at + 16).arrayBuffer())
    const { type, headerBytes, bytes } = boxHeader(head, 0, file.size - at)
    if (bytes < headerBytes) return null
    if (type === 'moov') {
      if (bytes > MOST_INDEX_BYTES) return null
      return new DataView(await file.slice(at + headerBytes, at + bytes).arrayBuffer())
    }
    at += bytes
  }
  return null
}

/** An hour of packets is listed in about 1 MB; pictures come on top. (Our own limit.) */
const MOST_INDEX_BYTES = 2 ** 26

function boxesIn(body: DataView | null): readonly Box[] {
  const boxes: Box[] = []
  for (let at = 0; body && at + 8 <= body.byteLength; ) {
    const left = body.byteLength - at
    const { type, headerBytes, bytes } = boxHeader(body, at, left)
    if (bytes < headerBytes || bytes > left) break
    boxes.push({
      type,
      body: new DataView(body.buffer, body.byteOffset + at + headerBytes, bytes - headerBytes),
    })
    at += bytes
  }
  return boxes
}

/** ISO/IEC 14496-12, 4.2: a size of 1 announces one of 64 bits, 0 means to the end. */
function boxHeader(view: DataView, at: number, left: number) {
  const size = view.getUint32(at)
  const type = fourCc(view, at + 4)
  if (size === 1 && at + 16 <= view.byteLength)
    return { type, headerBytes: 16, bytes: Number(view.getBigUint64(at + 8)) }
  return { type, headerBytes: 8, bytes: size === 0 ? left : size }
}

function find(boxes: readonly Box[], type: string): DataView | null {
  return boxes.find((box) => box.type === type)?.body ?? null
}

/** Units per second of an 'mvhd' or 'mdhd' box; version 1 has times of 64 bits ahead of it. */
function timescaleOf(body: DataView | null): number | null {
  if (!body || body.byteLength < 24) return null
  const scale = body.getUint32(body.getUint8(0) === 1 ? 20 : 12)
  return scale > 0 ? scale : null
}

function handlerOf(body: DataView | null): string | null {
  return body && body.byteLength >= 12 ? fourCc(body, 8) : null
}

/** The one edit of a list, in its units; null where there are more, a pause, or another speed. */
function onlyEdit(body: DataView | null): { readonly duration: number; readonly mediaTime: number } | null {
  if (!body || body.byteLength < 20 || body.getUint32(4) !== 1) return null
  const isLong = body.getUint8(0) === 1
  if (isLong && body.byteLength < 28) return null
  const duration = isLong ? Number(body.getBigUint64(8)) : body.getUint32(8)
  const mediaTime = isLong ? Number(body.getBigInt64(16)) : body.getInt32(12)
  const rate = body.getInt16(isLong ? 24 : 16)
  return mediaTime >= 0 && rate === 1 ? { duration, mediaTime } : null
}

/** How many packets there are, the length of the longest, and of all together; null where the table is empty. */
function packetTimes(body: DataView | null) {
  let count = 0
  let total = 0
  let longest = 0
  const entries = body && body.byteLength >= 8 ? body.getUint32(4) : 0
  for (let i = 0, at = 8; body && i < entries && at + 8 <= body.byteLength; i++, at += 8) {
    const packets = body.getUint32(at)
    const length = body.getUint32(at + 4)
    count += packets
    total += packets * length
    longest = Math.max(longest, length)
  }
  return count > 0 ? { count, total, longest } : null
}

function fourCc(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)))
}
