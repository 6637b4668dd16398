import { frameCount, type Sound } from '../core'
import type { ListenOptions, ListenSettings, Report, ToThread } from './engine/messages'
import workletUrl from './thread/evenhand.worklet.ts?worker&url'
import { LISTEN_PROCESSOR } from './thread/processor-names'

/** Why nothing is heard, where the user can do something about it. */
export type PlayerErrorCode = 'no-audio' | 'blocked' | 'stopped'

/** Playing that did not work. The message says what to do. */
export class PlayerError extends Error {
  override readonly name = 'PlayerError'

  constructor(
    readonly code: PlayerErrorCode,
    message: string,
  ) {
    super(message)
  }
}

/** What the player tells while it runs. */
export interface PlayerEvents {
  onReport(report: Report): void
  /** Something went wrong while it played; it can be started again. */
  onError(error: PlayerError): void
}

interface Running {
  readonly context: AudioContext
  readonly node: AudioWorkletNode
}

/**
 * Plays one take through the audio thread's engine. The context is made at the take's own rate, at the first
 * press of play, because browsers start sound only from a gesture.
 */
export class Player {
  private running: Promise<Running> | null = null
  private take: Sound | null = null
  private backing: Sound | null = null
  private settings: ListenSettings | null = null
  private loop: { readonly from: number; readonly to: number } | null = null

  constructor(private readonly events: PlayerEvents) {}

  /** Replaces take and backing. Both must have the same sample rate. Stops what plays. */
  async load(take: Sound, backing: Sound | null, settings: ListenSettings): Promise<void> {
    await this.close()
    this.take = take
    this.backing = backing
    this.settings = settings
    this.loop = null
  }

  /** Replaces the backing alone; what plays goes on. */
  setBacking(backing: Sound | null): void {
    this.backing = backing
    this.post({ type: 'backing', channels: backing?.channels ?? null })
  }

  /** Goes to other settings, smoothly. */
  set(settings: ListenSettings): void {
    this.settings = settings
    this.post({ type: 'settings', settings })
  }

  /** Repeats a stretch of the take; null to play to the end. */
  setLoop(loop: { readonly from: number; readonly to: number } | null): void {
    this.loop = loop
    this.post({ type: 'loop', loop })
  }

  /**
   * Plays from a frame of the take. Call it from a key press or click.
   * @throws PlayerError when the browser gives no sound
   */
  async play(fromFrame: number): Promise<void> {
    const { context, node } = await this.start()
    if (context.state !== 'running') {
      await context.resume().catch(() => {
        throw new PlayerError('blocked', 'The browser did not let sound start. Press play once more.')
      })
    }
    send(node, { type: 'play', fromFrame })
  }

  /** Fades out and stands still. */
  stop(): void {
    this.post({ type: 'stop' })
  }

  /** Seconds between what leaves the engine and what is heard. */
  async outputLatencySeconds(): Promise<number> {
    const running = await this.running
    return running ? running.context.outputLatency || running.context.baseLatency || 0 : 0
  }

  /** Ends all sound and frees the audio device. */
  async close(): Promise<void> {
    const ending = this.running
    this.running = null
    const running = await ending?.catch(() => null)
    if (running && running.context.state !== 'closed') await running.context.close()
  }

  private start(): Promise<Running> {
    if (!this.running) {
      this.running = this.build()
      this.running.catch(() => {
        this.running = null
      })
    }
    return this.running
  }

  private async build(): Promise<Running> {
    const { take, settings } = this
    if (!take || !settings || frameCount(take) === 0) {
      throw new PlayerError('no-audio', 'There is no take to play yet. Bring one in first.')
    }
    const context = new AudioContext({ sampleRate: take.sampleRate, latencyHint: 'interactive' })
    await context.audioWorklet.addModule(workletUrl)
    const options: ListenOptions = { take: take.channels, settings }
    const node = new AudioWorkletNode(context, LISTEN_PROCESSOR, {
      numberOfInputs: 0,
      outputChannelCount: [2],
      processorOptions: options,
    })
    node.port.onmessage = ({ data }: MessageEvent<Report>) => this.events.onReport(data)
    node.onprocessorerror = () => this.fail()
    context.onstatechange = () => {
      // Taken away by the system: a call, another program, a device that went.
      if (context.state === 'suspended' && this.running) this.fail()
    }
    node.connect(context.destination)
    send(node, { type: 'backing', channels: this.backing?.channels ?? null })
    send(node, { type: 'loop', loop: this.loop })
    return { context, node }
  }

  private fail(): void {
    this.events.onError(
      new PlayerError('stopped', 'Sound stopped on its way to the output. Press play to start it again.'),
    )
    void this.close()
  }

  private post(message: ToThread): void {
    void this.running?.then(({ node }) => send(node, message)).catch(() => undefined)
  }
}

function send(node: AudioWorkletNode, message: ToThread): void {
  node.port.postMessage(message)
}
