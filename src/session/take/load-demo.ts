import type { Sound } from '../../core'
import workerUrl from './demo.worker.ts?worker&url'

/** The demo's sounds. */
export interface SungDemo {
  readonly title: string
  readonly vocal: Sound
  readonly backing: Sound
}

/** The demo could not be made. Its message is made to be shown. */
export class DemoError extends Error {
  override readonly name = 'DemoError'
}

/** Synthesises the demo in a worker of its own, which ends with it. Rejects with a `DemoError`. */
export function loadDemo(): Promise<SungDemo> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerUrl, { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<SungDemo>) => {
      worker.terminate()
      resolve(data)
    }
    worker.onerror = () => {
      worker.terminate()
      reject(
        new DemoError(
          'The demo could not be loaded. Check the connection and try the demo again, or open your own take.',
        ),
      )
    }
  })
}
