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

const MARK = ' - evenhand'
/** The mark of a file that was delivered, with what kind of file it was. */
const MARKED = new RegExp(`${MARK}(?:, [^,]*)?$`)

/**
 * The name under which the processed version of the take `takeName` is delivered: "Take 3.flac" becomes
 * "Take 3 - evenhand.wav", or with a kind "Take 3 - evenhand, 24-bit.wav". A take that was itself delivered keeps a
 * single mark, and characters that some file system refuses become "-".
 *
 * @param extension of the delivered file, without the dot
 * @param kind what tells it from other files of the same take, in words without a comma
 */
export function deliveredName(takeName: string, extension = 'wav', kind: string | null = null): string {
  const stem = takeName
    .replace(/\.[a-z0-9]{1,5}$/i, '')
    .replace(/[\p{Cc}\\/:*?"<>|]/gu, '-')
    .trim()
  const bare = stem.replace(MARKED, '')
  return `${bare === '' ? 'Take' : bare}${MARK}${kind === null ? '' : `, ${kind}`}.${extension}`
}
