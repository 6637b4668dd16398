import { render } from '@testing-library/react'
import type { ReactNode } from 'react'
import { vi } from 'vitest'
import { type Bench, createBench } from '../../../src/session/bench'
import { BenchProvider } from '../../../src/view/bench-context'

/** A worker that takes everything and never answers: these tests are about the page. */
class SilentWorker {
  onmessage = null
  onerror = null
  postMessage(): void {}
  terminate(): void {}
}

/** Shows something on a bench of its own, with the demo's chain on it and no take. */
export function showOnBench(part: ReactNode): Bench {
  vi.stubGlobal('Worker', SilentWorker)
  const bench = createBench()
  render(<BenchProvider bench={bench}>{part}</BenchProvider>)
  return bench
}
