import type { Sound } from '../core'
import workerUrl from './demo.worker.ts?worker&url'

/** The demo as the bench needs it. */
export interface SungDemo {
  readonly title: string
  readonly vocal: Sound
  readonly backing: Sound
}

/** Has the demo sung in a worker of its own, which ends with it. */
export function loadDemo(): Promise<SungDemo> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerUrl, { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<SungDemo>) => {
      worker.terminate()
      resolve(data)
    }
    worker.onerror = () => {
      worker.terminate()
      reject(new Error('The demo could not be sung.'))
    }
  })
}
