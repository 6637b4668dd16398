import type { App } from '../session/app'
import { wouldBeLost } from '../session/chain/chain-store'

/**
 * Has the browser ask, in its own words, before the page closes while the chain has changes that are in no file. It
 * listens only then: some browsers do not keep a page for "back" that listens (HTML standard, "prompt to unload").
 * @returns ends it
 */
export function askBeforeLeaving({ chain }: Pick<App, 'chain'>): () => void {
  const ask = (event: BeforeUnloadEvent) => event.preventDefault()
  const follow = () => {
    if (wouldBeLost(chain.getState())) window.addEventListener('beforeunload', ask)
    else window.removeEventListener('beforeunload', ask)
  }
  follow()
  const stop = chain.subscribe((now, before) => {
    if (now.chain !== before.chain || now.safe !== before.safe) follow()
  })
  return () => {
    stop()
    window.removeEventListener('beforeunload', ask)
  }
}
