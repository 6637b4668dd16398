import workerUrl from './file.worker.ts?worker&url'
import { FileError, readerNotLoaded, unreadable } from './file-error'
import { HEADER_LIMIT_MS } from './limits'
import type { FileAnswer, FileOpener, OpenedFile } from './open-file'

/**
 * Opens a file in a worker of its own, which ends with it: the page goes on meanwhile, and what takes too long or is
 * not wanted any more is ended in the middle.
 * @throws FileError as openFile does, and 'too-slow'
 */
export const openInWorker: FileOpener = (file, { mostBytes, onHeader, signal }) =>
  new Promise<OpenedFile>((resolve, reject) => {
    signal?.throwIfAborted()
    const worker = new Worker(workerUrl, { type: 'module' })
    const end = () => {
      clearTimeout(limit)
      signal?.removeEventListener('abort', abort)
      worker.terminate()
    }
    const fail = (reason: unknown) => {
      end()
      reject(reason)
    }
    const abort = () => fail(signal?.reason)
    const limit = setTimeout(() => {
      const advice = 'Copy or export it again, as WAV or FLAC if you can: it is probably damaged.'
      fail(new FileError('too-slow', file.name, 'took too long to make sense of', advice))
    }, HEADER_LIMIT_MS)
    signal?.addEventListener('abort', abort)
    let answered = false
    worker.onmessage = ({ data }: MessageEvent<FileAnswer>) => {
      answered = true
      if (data.type === 'header') {
        clearTimeout(limit)
        onHeader?.()
      } else if (data.type === 'opened') {
        end()
        resolve(data.opened)
      } else {
        fail(new FileError(data.code, file.name, data.problem, data.advice))
      }
    }
    worker.onerror = (event) => {
      fail(answered ? unreadable(file.name, event.message) : readerNotLoaded(file.name, event.message))
    }
    worker.postMessage({ file, mostBytes })
  })
