import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { createBench } from '../session/bench'
import { App } from './app'
import { askBeforeLeaving } from './dialog/ask-before-leaving'
import './tokens.css'
import './base.css'

const root = document.getElementById('root')
if (!root) throw new Error('the page has no #root')

const bench = createBench()
// The first visit lands on something that already sounds.
void bench.takes.openDemo()
askBeforeLeaving(bench)

createRoot(root).render(
  <StrictMode>
    <App bench={bench} />
  </StrictMode>,
)
