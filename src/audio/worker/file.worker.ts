import { FileError } from '../files/file-error'
import { openFile } from '../files/open-file'
import type { FileAnswer, FileWanted } from '../files/open-protocol'
import { postMoving } from './post-moving'

declare const self: DedicatedWorkerGlobalScope

self.onmessage = async ({ data: { file, mostBytes } }: MessageEvent<FileWanted>) => {
  const answer = (message: FileAnswer) => postMoving(self, message)
  try {
    const onHeader = () => answer({ type: 'header' })
    const opened = await openFile(file, { onHeader, ...(mostBytes !== undefined && { mostBytes }) })
    answer({ type: 'opened', opened })
  } catch (error) {
    const { code, problem, advice } =
      error instanceof FileError
        ? error
        : new FileError('unreadable', file.name, 'could not be read', 'Try again, or open another file.')
    answer({ type: 'failed', code, problem, advice })
  }
}
