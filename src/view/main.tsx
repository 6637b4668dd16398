import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { createApp } from '../session/app'
import { askBeforeLeaving } from './ask-before-leaving'
import { Page } from './page'
import { prefetchParts } from './prefetch'
import { printInLight } from './print-in-light'
import { sayNotStarted } from './start/say-not-started'
import './face.css'
import './tokens.css'
import './base.css'
import './print.css'

const NO_WORKERS =
  'This browser gives the page no workers, and without them no sound can be opened, measured or rendered. Open Evenhand in a current browser, or allow workers where they were switched off.'

function start(root: HTMLElement): void {
  const app = createApp()
  // The first visit lands on something that already sounds.
  void app.takes.openDemo()
  askBeforeLeaving(app)
  prefetchParts(app)
  printInLight()
  createRoot(root).render(
    <StrictMode>
      <Page app={app} />
    </StrictMode>,
  )
}

const root = document.getElementById('root')
if (!root) throw new Error('the page has no #root')
if (typeof Worker === 'undefined') sayNotStarted(root, NO_WORKERS)
else
  try {
    start(root)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    sayNotStarted(
      root,
      `Evenhand could not start: ${reason}. Reload the page, or open it in a current browser.`,
    )
    throw error
  }
