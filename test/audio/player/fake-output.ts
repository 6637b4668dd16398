import { vi } from 'vitest'
import type { Report, ToThread } from '../../../src/audio/engine/messages'

/** A context that runs, stops and stands still as a test says. */
export class FakeContext extends EventTarget {
  state: 'suspended' | 'running' | 'interrupted' | 'closed' = 'suspended'
  currentTime = 0
  baseLatency = 0
  readonly destination = {}
  readonly audioWorklet
  readonly sent: ToThread[] = []
  private clock: ReturnType<typeof setInterval> | undefined

  constructor(
    readonly sampleRate: number,
    private readonly letsSoundStart: boolean,
    moduleMs: number,
  ) {
    super()
    this.audioWorklet = { addModule: () => new Promise<void>((resolve) => setTimeout(resolve, moduleMs)) }
  }

  /** Asked for either of these, Firefox may wait for ever: the page must not. */
  get outputLatency(): number {
    throw new Error('outputLatency was read')
  }

  getOutputTimestamp(): never {
    throw new Error('getOutputTimestamp was called')
  }

  /** Left open for ever where the browser does not let sound start. */
  resume(): Promise<void> {
    if (!this.letsSoundStart) return new Promise(() => undefined)
    this.go('running')
    this.run()
    return Promise.resolve()
  }

  /** The clock goes on. */
  run(): void {
    this.clock = setInterval(() => {
      this.currentTime += 0.05
    }, 50)
  }

  close(): Promise<void> {
    this.freeze()
    this.go('closed')
    return Promise.resolve()
  }

  /** The clock stands still, whatever the state says. */
  freeze(): void {
    clearInterval(this.clock)
  }

  go(state: FakeContext['state']): void {
    this.state = state
    this.dispatchEvent(new Event('statechange'))
  }
}

export interface FakeOutput {
  readonly contexts: FakeContext[]
  /** Whether contexts made from now on run when asked. */
  letsSoundStart: boolean
  /** How long the module takes to load into contexts made from now on, ms. */
  moduleMs: number
  /** Reports to the page as the audio thread of a context (the newest, unless told which) would. */
  report(report: Partial<Report>, context?: number): void
  /** The processor of a context (the newest, unless told which) throws. */
  breakProcessor(context?: number): void
}

/** Puts fakes in the place of the browser's audio. */
export function fakeOutput(): FakeOutput {
  const ports: { onmessage: ((event: { data: Report }) => void) | null; postMessage(m: ToThread): void }[] =
    []
  const nodes: { onprocessorerror: (() => void) | null }[] = []
  const output: FakeOutput = {
    contexts: [],
    letsSoundStart: true,
    moduleMs: 0,
    report(report, context = -1) {
      const data: Report = {
        type: 'report',
        request: 1,
        running: true,
        positionFrame: 0,
        stageGainsDb: new Float32Array(),
        peak: 0,
        momentaryLufs: Number.NEGATIVE_INFINITY,
        ...report,
      }
      ports.at(context)?.onmessage?.({ data })
    },
    breakProcessor: (context = -1) => nodes.at(context)?.onprocessorerror?.(),
  }
  vi.stubGlobal('navigator', {})
  vi.stubGlobal(
    'AudioContext',
    class extends FakeContext {
      constructor({ sampleRate }: { sampleRate: number }) {
        super(sampleRate, output.letsSoundStart, output.moduleMs)
        output.contexts.push(this)
      }
    },
  )
  vi.stubGlobal(
    'AudioWorkletNode',
    class {
      onprocessorerror: (() => void) | null = null
      readonly port
      constructor({ sent }: FakeContext) {
        this.port = { onmessage: null, postMessage: (message: ToThread) => void sent.push(message) }
        ports.push(this.port)
        nodes.push(this)
      }
      connect(): void {}
    },
  )
  return output
}
