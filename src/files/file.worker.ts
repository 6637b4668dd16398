import { postMoving } from '../compute/port/post-moving'
import { FileError, unreadable } from './file-error'
import type { FileAnswer, FileWanted } from './open-file'
import { openFile } from './open-file'

declare const self: DedicatedWorkerGlobalScope

self.onmessage = async ({ data: { file, mostBytes } }: MessageEvent<FileWanted>) => {
  const answer = (message: FileAnswer) => postMoving(self, message)
  try {
    const onHeader = () => answer({ type: 'header' })
    const opened = await openFile(file, { onHeader, ...(mostBytes !== undefined && { mostBytes }) })
    answer({ type: 'opened', opened })
  } catch (error) {
    const { code, problem, advice } = error instanceof FileError ? error : unreadable(file.name, error)
    answer({ type: 'failed', code, problem, advice })
  }
}
