import { FileError } from './file-error'

/**
 * The bytes of `blob`, in memory of their own, which a browser's decoder may take away.
 * @throws FileError 'unreadable' when the file has gone, changed, or may not be read
 */
export async function readBytes(blob: Blob, fileName: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await blob.arrayBuffer())
  } catch (cause) {
    const advice = 'Check that it is still where it was and on this device, and open it again.'
    throw new FileError('unreadable', fileName, 'could not be read', advice, cause)
  }
}
