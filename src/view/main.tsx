import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { createApp } from '../session/app'
import { askBeforeLeaving } from './ask-before-leaving'
import { Page } from './page'
import './tokens.css'
import './base.css'

const root = document.getElementById('root')
if (!root) throw new Error('the page has no #root')

const app = createApp()
// The first visit lands on something that already sounds.
void app.takes.openDemo()
askBeforeLeaving(app)

createRoot(root).render(
  <StrictMode>
    <Page app={app} />
  </StrictMode>,
)
