import type { StretchTrace } from '../../src/compute/lanes/live-traces'
import type { FromWorker, ToWorker } from '../../src/compute/messages'

/** What a drag was like for the page, all in ms. */
export interface DragReport {
  /** From each pointer move reaching the page to the end of the frame that it is drawn in. */
  readonly frameMs: readonly number[]
  /**
   * From each pointer move to the end of the frame in which all that is seen of every lane that changes is of it, or
   * of later moves.
   */
  readonly lanesMs: readonly number[]
  /** Tasks of the main thread over 50 ms while dragging, and until the figures are in. */
  readonly longTasksMs: readonly number[]
  /** From letting go to all figures being up to date. */
  readonly settledMs: number
}

declare global {
  interface Window {
    dragProbe?: { finish(): Promise<DragReport> }
  }
}

/**
 * Runs in the page, and holds all it needs within itself: watches frames, what the page asks of its workers and the
 * main thread, until `finish`.
 */
export function startProbe(): void {
  const frameMs: number[] = []
  const lanesMs: number[] = []
  const longTasksMs: number[] = []
  /** By the id of the first job of each move: every worker has one. */
  const asked: { readonly id: number; readonly at: number }[] = []
  const firstIds = new Map<number, number>()
  let firstOfMove: number | null = null
  /** What each piece of each lane is drawn for. */
  const pieces = new Map<string, number>()
  let drawnId = 0
  const watched = new WeakSet<Worker>()
  const watching = new AbortController()
  const capture = { capture: true, signal: watching.signal }
  let movedAt = Number.NaN
  let releasedAt = Number.NaN
  const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

  /** Asked for while the frame is made, and ahead of all other tasks: it runs once the frame has been painted. */
  const atEndOfFrame = (then: () => void) =>
    requestAnimationFrame(() => void scheduler.postTask(then, { priority: 'user-blocking' }))

  const onMove = ({ buttons }: PointerEvent) => {
    if (buttons === 0) return
    const at = performance.now()
    movedAt = at
    atEndOfFrame(() => frameMs.push(performance.now() - at))
  }
  const onRelease = () => {
    releasedAt = performance.now()
  }
  addEventListener('pointermove', onMove, capture)
  addEventListener('pointerup', onRelease, capture)

  const isTraces = (piece: unknown): piece is readonly StretchTrace[] => Array.isArray(piece)
  /** All jobs of a move are asked for in one go. */
  const onAsk = (id: number) => {
    if (firstOfMove === null) {
      asked.push({ id, at: movedAt })
      queueMicrotask(() => {
        firstOfMove = null
      })
    }
    firstOfMove ??= id
    firstIds.set(id, firstOfMove)
  }
  const onAnswer = ({ data }: MessageEvent<FromWorker>) => {
    const firstId = data.type === 'piece' ? firstIds.get(data.id) : undefined
    if (data.type !== 'piece' || firstId === undefined || !isTraces(data.piece)) return
    for (const { stageId, firstHop } of data.piece) pieces.set(`${stageId} ${firstHop}`, firstId)
    const oldest = Math.min(...pieces.values())
    const done = asked.filter(({ id }) => id > drawnId && id <= oldest)
    drawnId = oldest
    atEndOfFrame(() => {
      const now = performance.now()
      for (const { at } of done) lanesMs.push(now - at)
    })
  }
  const { postMessage } = Worker.prototype
  Worker.prototype.postMessage = function (this: Worker, message: ToWorker, options?: object) {
    if (message.type === 'job' && message.kind === 'lanes') onAsk(message.id)
    // Behind the page's own listener: what has come is in place when this one hears of it.
    if (!watched.has(this)) this.addEventListener('message', onAnswer, { signal: watching.signal })
    watched.add(this)
    postMessage.call(this, message, options)
  }
  const tasks = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longTasksMs.push(duration)
  })
  tasks.observe({ type: 'longtask' })

  window.dragProbe = {
    async finish() {
      while (document.querySelector('table[aria-busy="true"]')) await pause(5)
      const settledMs = performance.now() - releasedAt
      // Long tasks are told of late.
      await pause(200)
      Worker.prototype.postMessage = postMessage
      watching.abort()
      tasks.disconnect()
      return { frameMs, lanesMs, longTasksMs, settledMs }
    },
  }
}
