/** Looked at this often, ms. */
const EVERY_MS = 250
/** A clock that has stood still for this many looks in a row has stopped: half a second, and a look to begin with. */
const STILL_LOOKS = 2
/** Where looks come later than this, ms, the page itself was asleep, and nothing can be said about its sound. */
const ASLEEP_MS = 1000

/**
 * Watches a running context for its output going away: taken by the system (a call, another program), a device
 * that is gone, or a clock that says "running" and stands still, as some systems leave it after an interruption.
 * @param onLost called once, after which the context is of no more use
 * @returns ends watching
 */
export function watchOutput(context: AudioContext, onLost: () => void): () => void {
  let lastTime = context.currentTime
  let lastLook = performance.now()
  let stillLooks = 0
  const watching = new AbortController()
  const end = () => {
    watching.abort()
    clearInterval(timer)
  }
  const lose = () => {
    end()
    onLost()
  }
  const changed = () => {
    if (context.state !== 'running') lose()
  }
  const look = () => {
    const now = performance.now()
    const asleep = now - lastLook > ASLEEP_MS
    const still = context.state === 'running' && context.currentTime === lastTime && !asleep
    stillLooks = still ? stillLooks + 1 : 0
    lastTime = context.currentTime
    lastLook = now
    if (stillLooks >= STILL_LOOKS) lose()
  }
  const timer = setInterval(look, EVERY_MS)
  context.addEventListener('statechange', changed, { signal: watching.signal })
  context.addEventListener('error', lose, { signal: watching.signal })
  return end
}
