import { type FrameRange, frameCount, type Sound } from '../../core'
import type { ListenSettings, Report, ToThread } from '../engine/messages'
import { HeardPosition, secondsToEar } from './heard-position'
import { type Output, openOutput } from './output'
import { watchOutput } from './output-watch'
import { PlayerError } from './player-error'

/** An output that has run for so long, seconds, is one that works: should it go away, another is worth a try. */
const PROVEN_SECONDS = 10

/** What the player tells while it runs. */
export interface PlayerEvents {
  /** Positions are those that reach the ear now. */
  onReport(report: Report): void
  /** Sound went away while it played, and did not come back by itself; it can be started again. */
  onError(error: PlayerError): void
}

/** An output from the moment it is asked for. */
interface Opening {
  readonly opened: Promise<Output>
  /** Closes it, or gives it up while it is still being opened: nothing more is heard of it. */
  readonly closing: AbortController
}

/**
 * Plays one take through the audio thread's engine. The output is opened at the take's own rate, at the first
 * press of play, because browsers start sound only from a gesture. Where it goes away while it plays, for whatever
 * reason, it is given up and another is opened, once, that goes on at the same place; where that is of no use either,
 * the next press of play opens another.
 */
export class Player {
  private opening: Opening | null = null
  private take: Sound | null = null
  private backing: Sound | null = null
  private settings: ListenSettings | null = null
  private loop: FrameRange | null = null
  private readonly position = new HeardPosition()
  /** Counts what was asked for, so that what came too late is known. */
  private request = 0
  private playing = false
  /** Where in the take the sound was that last reached the ear. */
  private heardFrame = 0

  constructor(private readonly events: PlayerEvents) {}

  /** Replaces take and backing. Both must have the same sample rate. Stops what plays. */
  load(take: Sound, backing: Sound | null, settings: ListenSettings): void {
    this.take = take
    this.backing = backing
    this.settings = settings
    this.loop = null
    this.close()
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
  setLoop(loop: FrameRange | null): void {
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
    this.heardFrame = fromFrame
    this.opening ??= this.open()
    try {
      const { node } = await this.opening.opened
      if (request !== this.request) return
      send(node, { type: 'play', fromFrame, request })
    } catch (error) {
      if (request !== this.request) return
      this.close()
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
  close(): void {
    this.request++
    this.playing = false
    this.opening?.closing.abort()
    this.opening = null
  }

  /** @param isRetry whether it takes the place of an output that went away */
  private open(isRetry = false): Opening {
    const closing = new AbortController()
    const opened = this.connect(closing.signal, isRetry)
    const opening = { opened, closing }
    opened.catch(() => {
      closing.abort()
      if (this.opening === opening) this.opening = null
    })
    return opening
  }

  private async connect(signal: AbortSignal, isRetry: boolean): Promise<Output> {
    const { take, settings } = this
    if (!take || !settings || frameCount(take) === 0) {
      throw new PlayerError('no-audio', 'There is no take to play yet. Open one first.')
    }
    const output = await openOutput(take, settings, signal)
    const { context, node } = output
    node.port.onmessage = ({ data }: MessageEvent<Report>) => {
      if (!signal.aborted) this.receive(data, context)
    }
    // What was set while the module loaded is sent behind these.
    send(node, { type: 'backing', channels: this.backing?.channels ?? null })
    send(node, { type: 'loop', loop: this.loop })
    const lose = () => {
      if (!signal.aborted) this.lose(isRetry && context.currentTime < PROVEN_SECONDS)
    }
    watchOutput(context, lose, signal)
    node.onprocessorerror = lose
    return output
  }

  private receive(report: Report, context: AudioContext): void {
    const late = report.request !== this.request
    if (late && this.playing) return
    if (!late && !report.running) this.playing = false
    const delayFrames = secondsToEar(context) * context.sampleRate
    const positionFrame = Math.round(this.position.at(report.positionFrame, delayFrames, this.loop))
    this.heardFrame = positionFrame
    this.events.onReport({ ...report, positionFrame })
  }

  /** The output went away. @param retried whether another has just been tried in vain */
  private lose(retried: boolean): void {
    const { playing, heardFrame } = this
    this.close()
    if (!playing) return
    const stopped = (cause?: unknown) => {
      const message = 'The audio output stopped. Press play to restart it.'
      this.events.onError(new PlayerError('stopped', message, { cause }))
    }
    if (retried) {
      stopped()
      return
    }
    this.opening = this.open(true)
    this.play(heardFrame).catch(stopped)
  }

  private post(message: ToThread): void {
    void this.opening?.opened.then(({ node }) => send(node, message)).catch(() => undefined)
  }
}

function send(node: AudioWorkletNode, message: ToThread): void {
  node.port.postMessage(message)
}
