import { monitorProbe } from './monitor-probe'

/** What reached the output, and how the browser kept up with it. */
export interface OutputFigures {
  readonly contexts: number
  /** Samples that are not a number or infinite. */
  readonly wrong: number
  readonly peak: number
  /** The largest difference between neighbouring samples. */
  readonly largestStep: number
  /** Time that contexts ran by the clock on the wall, and by their own. */
  readonly wallSeconds: number
  readonly audioSeconds: number
  /** Gaps that the browser counted at the device. */
  readonly underruns: number
  readonly underrunSeconds: number
}

interface Watched {
  readonly context: AudioContext
  wallSeconds: number
  audioSeconds: number
}

/** Looked at this often, ms. */
const EVERY_MS = 100

/**
 * Watches everything that the page sends to its audio output, without the page knowing: its contexts' destination
 * is a gain that leads to the real one through a probe. Call before the first context is made.
 */
export function watchOutputs(): () => OutputFigures {
  const own = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, 'destination')
  const tees = new WeakMap<AudioContext, AudioNode>()
  const watched: Watched[] = []
  const seen = { wrong: 0, peak: 0, largestStep: 0 }
  Object.defineProperty(AudioContext.prototype, 'destination', {
    get(this: AudioContext) {
      const known = tees.get(this)
      if (known) return known
      const destination: AudioNode = own?.get?.call(this)
      const tee = this.createGain()
      tees.set(this, tee)
      watched.push({ context: this, wallSeconds: 0, audioSeconds: 0 })
      void monitorProbe(this, tee, destination, ({ wrong, peak, largestStep }) => {
        seen.wrong += wrong
        seen.peak = Math.max(seen.peak, peak)
        seen.largestStep = Math.max(seen.largestStep, largestStep)
      })
      return tee
    },
  })
  let lastLook = performance.now()
  const lastTimes = new WeakMap<AudioContext, number>()
  setInterval(() => {
    const now = performance.now()
    for (const one of watched) {
      const { currentTime, state } = one.context
      const before = lastTimes.get(one.context)
      if (state === 'running' && before !== undefined) {
        one.wallSeconds += (now - lastLook) / 1000
        one.audioSeconds += currentTime - before
      }
      if (state === 'running') lastTimes.set(one.context, currentTime)
      else lastTimes.delete(one.context)
    }
    lastLook = now
  }, EVERY_MS)
  return () => ({
    contexts: watched.length,
    ...seen,
    wallSeconds: sum(watched, ({ wallSeconds }) => wallSeconds),
    audioSeconds: sum(watched, ({ audioSeconds }) => audioSeconds),
    underruns: sum(watched, ({ context }) => playbackFigure(context, 'underrunEvents')),
    underrunSeconds: sum(watched, ({ context }) => playbackFigure(context, 'underrunDuration')),
  })
}

/** A figure of the Web Audio API's AudioPlaybackStats, which the DOM types do not know yet; NaN where unknown. */
function playbackFigure(context: AudioContext, name: 'underrunEvents' | 'underrunDuration'): number {
  const stats: unknown = Reflect.get(context, 'playbackStats')
  const figure: unknown = typeof stats === 'object' && stats !== null ? Reflect.get(stats, name) : undefined
  return typeof figure === 'number' ? figure : Number.NaN
}

function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((total, item) => total + of(item), 0)
}
