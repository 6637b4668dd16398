/** Looked at this often, ms. */
const LOOK_MS = 250
/** A look that comes this long after the last tells of a page that was not run, and nothing about its sound, ms. */
const LATE_MS = 2 * LOOK_MS
/** A clock that has stood still for this long has stopped, ms. */
const STOPPED_MS = 1000
/**
 * While sound starts it may stand still for longer, ms: the engine is being built on the audio thread, and some outputs
 * take sound in bursts (a PulseAudio null sink: the clock ran for 0.2 s, then stood still).
 */
const STOPPED_AT_START_MS = 3000
/** Sound is starting until the clock has run for so long, seconds. */
const START_SECONDS = 3

/** What of an AudioContext is looked at. */
type WatchedContext = EventTarget & Pick<AudioContext, 'state' | 'currentTime'>

/**
 * Watches a running context for its output going away: taken by the system (a call, another program), a device
 * that is gone, or a clock that says "running" and stands still, as some systems leave it after an interruption.
 * Only time in which the page itself was run counts: on a machine that runs neither page nor sound, sound is late, not
 * lost. Where an output is seen to take sound in bursts, it is given twice as long as its longest pause.
 * @param onLost called once, after which the context is of no more use
 * @param signal ends watching
 */
export function watchOutput(context: WatchedContext, onLost: () => void, signal: AbortSignal): void {
  const startTime = context.currentTime
  let lastTime = startTime
  let lastLook = performance.now()
  let stillMs = 0
  let longestPauseMs = 0
  const watching = new AbortController()
  const lose = () => {
    watching.abort()
    onLost()
  }
  const changed = () => {
    if (context.state !== 'running') lose()
  }
  const allowedMs = () =>
    lastTime - startTime < START_SECONDS
      ? STOPPED_AT_START_MS
      : Math.min(STOPPED_AT_START_MS, Math.max(STOPPED_MS, 2 * longestPauseMs))
  const look = () => {
    const now = performance.now()
    const ranMs = now - lastLook
    const moved = context.currentTime !== lastTime
    if (moved) longestPauseMs = Math.max(longestPauseMs, stillMs)
    stillMs = moved || ranMs > LATE_MS ? 0 : stillMs + Math.min(ranMs, LOOK_MS)
    lastTime = context.currentTime
    lastLook = now
    if (stillMs >= allowedMs()) lose()
  }
  const timer = setInterval(look, LOOK_MS)
  signal.addEventListener('abort', () => watching.abort(), { once: true })
  watching.signal.addEventListener('abort', () => clearInterval(timer), { once: true })
  context.addEventListener('statechange', changed, { signal: watching.signal })
  context.addEventListener('error', lose, { signal: watching.signal })
}
