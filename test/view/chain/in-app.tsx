import { render } from '@testing-library/react'
import type { ReactNode } from 'react'
import { vi } from 'vitest'
import { type App, createApp } from '../../../src/session/app'
import type { LazyPart } from '../../../src/session/lazy-part'
import { stageReading } from '../../../src/session/parts'
import { deliveryMaking, trialRunning } from '../../../src/session/sheet-parts'
import { cardFigures, chainTools, endFigures, listeningPoint } from '../../../src/view/chain/lazy-parts'
import { AppProvider } from '../../../src/view/context/app-context'
import { figuresTable } from '../../../src/view/figures/the-figures'
import { moreMenu, takeMenu } from '../../../src/view/header/the-header'
import { barParts } from '../../../src/view/listening/bar-parts'
import { responsePlot } from '../../../src/view/response/the-response'
import { stagePictures } from '../../../src/view/stage/lazy-stage-picture'
import { stageMenu } from '../../../src/view/stage/stage-menu'
import { takeLanes } from '../../../src/view/take/the-take'
import { SilentWorker } from '../../setup/silent-worker'

// As on a page that has been idle.
await Promise.all(
  [
    takeLanes,
    responsePlot,
    figuresTable,
    stagePictures,
    stageReading,
    deliveryMaking,
    trialRunning,
    cardFigures,
    chainTools,
    endFigures,
    listeningPoint,
    takeMenu,
    stageMenu,
    moreMenu,
    ...Object.values(barParts),
  ].map((part: LazyPart<unknown>) => part.load()),
)

/** Shows something in an app of its own, with the demo's chain on it and no take. */
export function showInApp(part: ReactNode): App {
  vi.stubGlobal('Worker', SilentWorker)
  const app = createApp()
  // Whatever the page begins with: tests go through the chain from its first stage.
  app.chain.getState().select('clean-up')
  render(<AppProvider app={app}>{part}</AppProvider>)
  return app
}
