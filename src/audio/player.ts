import { frameCount, type Sound } from '../core'
import type { ListenOptions, ListenSettings, Report, ToThread } from './engine/messages'
import type { LoopFrames } from './engine/track-reader'
import { HeardPosition } from './heard-position'
import { isRunning, resumed, soundInSilentMode } from './output-state'
import { watchOutput } from './output-watch'
import workletUrl from './thread/evenhand.worklet.ts?worker&url'
import { LISTEN_PROCESSOR } from './thread/processor-names'

/** Why nothing is heard, where the user can do something about it. */
export type PlayerErrorCode = 'no-audio' | 'no-output' | 'blocked' | 'stopped'

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
  /** Positions are those that reach the ear now. */
  onReport(report: Report): void
  /** Sound went away while it played; it can be started again. */
  onError(error: PlayerError): void
}

interface Running {
  readonly context: AudioContext
  readonly node: AudioWorkletNode
}

/**
 * Plays one take through the audio thread's engine. The context is made at the take's own rate, at the first
 * press of play, because browsers start sound only from a gesture. Where the output goes away, for whatever
 * reason, the context is given up, and the next press of play makes another.
 */
export class Player {
  private running: Promise<Running> | null = null
  /** The context in use. */
  private context: AudioContext | null = null
  private take: Sound | null = null
  private backing: Sound | null = null
  private settings: ListenSettings | null = null
  private loop: LoopFrames | null = null
  private readonly position = new HeardPosition()
  /** Counts what was asked for, so that what came too late is known. */
  private request = 0
  private playing = false

  constructor(private readonly events: PlayerEvents) {}

  /** Replaces take and backing. Both must have the same sample rate. Stops what plays. */
  async load(take: Sound, backing: Sound | null, settings: ListenSettings): Promise<void> {
    this.take = take
    this.backing = backing
    this.settings = settings
    this.loop = null
    await this.close()
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

  /** Repeats a stretch of the take, from its start where the playhead is outside it; null to play to the end. */
  setLoop(loop: LoopFrames | null): void {
    this.loop = loop
    this.post({ type: 'loop', loop })
  }

  /**
   * Plays from a frame of the take. Call it from a key press or click.
   * @throws PlayerError when the browser gives no sound
   */
  async play(fromFrame: number): Promise<void> {
    const request = ++this.request
    this.playing = true
    this.position.begin(fromFrame)
    try {
      const { node } = await this.start()
      if (request !== this.request) return
      send(node, { type: 'play', fromFrame, request })
    } catch (error) {
      if (request !== this.request) return
      await this.close()
      throw error
    }
  }

  /** Fades out and stands still. */
  stop(): void {
    this.request++
    this.playing = false
    this.post({ type: 'stop' })
  }

  /** Ends all sound and frees the audio device. */
  async close(): Promise<void> {
    this.request++
    this.playing = false
    const ending = this.running
    this.running = null
    this.context = null
    const running = await ending?.catch(() => null)
    if (running && running.context.state !== 'closed') await running.context.close()
  }

  private start(): Promise<Running> {
    if (!this.running) {
      const building = this.build()
      this.running = building
      building.catch(() => {
        if (this.running === building) this.running = null
      })
    }
    return this.running
  }

  private async build(): Promise<Running> {
    const { take, settings } = this
    if (!take || !settings || frameCount(take) === 0) {
      throw new PlayerError('no-audio', 'There is no take to play yet. Bring one in first.')
    }
    const context = newContext(take.sampleRate)
    // At once, within the gesture: some browsers forget it while the module loads.
    const starting = resumed(context)
    soundInSilentMode()
    await context.audioWorklet.addModule(workletUrl).catch(async () => {
      await context.close()
      throw new PlayerError(
        'no-output',
        'The part of this page that plays could not be loaded. Reload the page.',
      )
    })
    await starting
    // One that does not run is of no use to a later press of play either.
    if (!isRunning(context)) {
      await context.close()
      throw new PlayerError('blocked', 'The browser did not let sound start. Press play once more.')
    }
    // What was set while the module loaded is sent behind this.
    const options: ListenOptions = { take: take.channels, settings }
    const node = new AudioWorkletNode(context, LISTEN_PROCESSOR, {
      numberOfInputs: 0,
      outputChannelCount: [2],
      processorOptions: options,
    })
    node.port.onmessage = ({ data }: MessageEvent<Report>) => this.receive(data, context)
    node.connect(context.destination)
    send(node, { type: 'backing', channels: this.backing?.channels ?? null })
    send(node, { type: 'loop', loop: this.loop })
    this.context = context
    const endWatch = watchOutput(context, () => this.lose(context))
    node.onprocessorerror = () => {
      endWatch()
      this.lose(context)
    }
    return { context, node }
  }

  private receive(report: Report, context: AudioContext): void {
    const late = report.request !== this.request
    if (late && this.playing) return
    if (!late && !report.running) this.playing = false
    const { outputLatency, baseLatency, sampleRate } = context
    const delayFrames = (outputLatency || baseLatency || 0) * sampleRate
    const positionFrame = Math.round(this.position.at(report.positionFrame, delayFrames, this.loop))
    this.events.onReport({ ...report, positionFrame })
  }

  /** The output of `context` went away. */
  private lose(context: AudioContext): void {
    if (context !== this.context) return
    const wasPlaying = this.playing
    void this.close()
    if (!wasPlaying) return
    this.events.onError(
      new PlayerError('stopped', 'Sound stopped on its way to the output. Press play to start it again.'),
    )
  }

  private post(message: ToThread): void {
    void this.running?.then(({ node }) => send(node, message)).catch(() => undefined)
  }
}

function newContext(sampleRate: number): AudioContext {
  try {
    return new AudioContext({ sampleRate, latencyHint: 'interactive' })
  } catch {
    throw new PlayerError(
      'no-output',
      `The browser gives no sound output at ${sampleRate} Hz. Check the output device, then press play.`,
    )
  }
}

function send(node: AudioWorkletNode, message: ToThread): void {
  node.port.postMessage(message)
}
