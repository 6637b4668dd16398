import { act } from '@testing-library/react'
import type { ReactNode } from 'react'
import type { StoreApi } from 'zustand/vanilla'
import type { Sound } from '../../../src/core'
import type { App } from '../../../src/session/app'
import type { Take } from '../../../src/session/take/take-store'
import { FilePickers } from '../../../src/view/context/file-pickers'
import { ScreenProvider } from '../../../src/view/context/screen-context'
import { createScreenStore, type ScreenState } from '../../../src/view/context/screen-store'
import { showInApp } from '../chain/in-app'

/** Ten seconds at 8 kHz: long enough to go about in. */
export const sound: Sound = { sampleRate: 8000, channels: [new Float32Array(80_000)] }

export const take: Take = {
  name: 'Take 3.wav',
  sound,
  header: null,
  replacedSamples: 0,
  measures: null,
}

/** Shows a part of the page on a bench with a take on it. */
export function showOnPage(part: ReactNode): { app: App; screen: StoreApi<ScreenState> } {
  const screen = createScreenStore()
  const app = showInApp(
    <ScreenProvider screen={screen}>
      <FilePickers>{part}</FilePickers>
    </ScreenProvider>,
  )
  // Drawn before it is asked about.
  act(() => app.take.setState({ take }))
  return { app, screen }
}
