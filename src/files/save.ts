/** How long a download may take to begin reading its blob, ms: some browsers are slow (WebKit bug 211234). */
const REVOKE_AFTER_MS = 40_000

/** Saves `blob` to the user's downloads under `fileName`. Must be called from a click or a key press. */
export function saveBlob(blob: Blob, fileName: string): void {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = fileName
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), REVOKE_AFTER_MS)
}

const MARK = 'evenhand'
/** The mark of a file that was delivered, with what kind of file it was. */
const MARKED = new RegExp(` - ${MARK}(?:, [^,]*)?$`)

/** Longest file name that common file systems take, bytes of UTF-8. (From memory.) */
const MOST_NAME_BYTES = 255
/** What a browser may add: " (1)" to a second file of the name, ".crdownload" while it saves. (From memory.) */
const SPARE_BYTES = 16

/** The most of it that the version of the chain may take. */
const MOST_VERSION_BYTES = 100

const CHARACTERS = new Intl.Segmenter()
const UTF8 = new TextEncoder()

/**
 * The name under which the processed version of the take `takeName` is delivered: "Take 3.flac" becomes
 * "Take 3 - evenhand.wav", or with a kind "Take 3 - evenhand, 24-bit.wav", or of a version of the chain that is called
 * something "Take 3 - boosts first, 24-bit.wav". A take that was itself delivered keeps a single mark. Invisible format
 * characters and leading dots are dropped, characters that some file system refuses become "-", and a name too long for
 * a file system is cut at a whole character.
 *
 * @param extension of the delivered file, without the dot
 * @param kind what tells it from other files of the same take, in words without a comma
 * @param version what the version of the chain is called, in a few words
 */
export function deliveredName(
  takeName: string,
  extension = 'wav',
  kind: string | null = null,
  version: string | null = null,
): string {
  const stem = inFileName(takeName.replace(/\p{Cf}/gu, '').replace(/\.[a-z0-9]{1,5}$/i, ''))
  const mark = cutTo(MOST_VERSION_BYTES, inFileName(version ?? '')) || MARK
  const ending = ` - ${mark}${kind === null ? '' : `, ${kind}`}.${extension}`
  const room = MOST_NAME_BYTES - SPARE_BYTES - UTF8.encode(ending).length
  return `${cutTo(room, stem.replace(MARKED, '')) || 'Take'}${ending}`
}

/** Text as a part of a file's name. */
function inFileName(text: string): string {
  return text
    .replace(/\p{Cf}/gu, '')
    .replace(/[\p{Cc}\\/:*?"<>|]/gu, '-')
    .replace(/^[.\s]+/, '')
    .trim()
}

/** As many whole characters of `text`, as a reader counts them, as `mostBytes` of UTF-8 hold. */
function cutTo(mostBytes: number, text: string): string {
  let bytes = 0
  for (const { segment, index } of CHARACTERS.segment(text)) {
    bytes += UTF8.encode(segment).length
    if (bytes > mostBytes) return text.slice(0, index).trim()
  }
  return text
}
