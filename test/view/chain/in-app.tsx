import { render } from '@testing-library/react'
import type { ReactNode } from 'react'
import { vi } from 'vitest'
import { type App, createApp } from '../../../src/session/app'
import { AppProvider } from '../../../src/view/context/app-context'

/** A worker that takes everything and never answers: these tests are about the page. */
class SilentWorker {
  onmessage = null
  onerror = null
  postMessage(): void {}
  terminate(): void {}
}

/** Shows something on a bench of its own, with the demo's chain on it and no take. */
export function showInApp(part: ReactNode): App {
  vi.stubGlobal('Worker', SilentWorker)
  const app = createApp()
  render(<AppProvider app={app}>{part}</AppProvider>)
  return app
}
