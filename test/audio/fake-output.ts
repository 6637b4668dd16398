import { vi } from 'vitest'
import type { Report, ToThread } from '../../src/audio/engine/messages'

/** A context that runs, stops and stands still as a test says. */
export class FakeContext extends EventTarget {
  state: 'suspended' | 'running' | 'interrupted' | 'closed' = 'suspended'
  currentTime = 0
  outputLatency = 0
  baseLatency = 0
  readonly destination = {}
  readonly audioWorklet = { addModule: async () => undefined }
  readonly sent: ToThread[] = []
  private clock: ReturnType<typeof setInterval> | undefined

  constructor(
    readonly sampleRate: number,
    private readonly letsSoundStart: boolean,
  ) {
    super()
  }

  /** Left open for ever where the browser does not let sound start. */
  resume(): Promise<void> {
    if (!this.letsSoundStart) return new Promise(() => undefined)
    this.go('running')
    this.clock = setInterval(() => {
      this.currentTime += 0.05
    }, 50)
    return Promise.resolve()
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
  /** Reports to the page as the newest context's audio thread would. */
  report(report: Partial<Report>): void
  /** The newest context's processor throws. */
  breakProcessor(): void
}

/** Puts fakes in the place of the browser's audio. */
export function fakeOutput(): FakeOutput {
  const ports: { onmessage: ((event: { data: Report }) => void) | null; postMessage(m: ToThread): void }[] =
    []
  const nodes: { onprocessorerror: (() => void) | null }[] = []
  const output: FakeOutput = {
    contexts: [],
    letsSoundStart: true,
    report(report) {
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
      ports.at(-1)?.onmessage?.({ data })
    },
    breakProcessor: () => nodes.at(-1)?.onprocessorerror?.(),
  }
  vi.stubGlobal('navigator', {})
  vi.stubGlobal(
    'AudioContext',
    class extends FakeContext {
      constructor({ sampleRate }: { sampleRate: number }) {
        super(sampleRate, output.letsSoundStart)
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
