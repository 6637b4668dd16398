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

const SUFFIX = ' - evenhand'

/**
 * The name under which the processed version of the take `takeName` is delivered: "Take 3.flac" becomes
 * "Take 3 - evenhand.wav". A take that was itself delivered keeps a single mark, and characters that some file
 * system refuses become "-".
 *
 * @param extension of the delivered file, without the dot
 */
export function deliveredName(takeName: string, extension = 'wav'): string {
  const stem = takeName
    .replace(/\.[a-z0-9]{1,5}$/i, '')
    .replace(/[\p{Cc}\\/:*?"<>|]/gu, '-')
    .trim()
  const bare = stem.endsWith(SUFFIX) ? stem.slice(0, -SUFFIX.length) : stem
  return `${bare === '' ? 'Take' : bare}${SUFFIX}.${extension}`
}
