import type { FrameRange } from '../../core'

/** One recording to be read, with the take's frame at which it begins. */
export interface Track {
  readonly channels: readonly Float32Array[]
  readonly offsetFrames: number
}

/** Where reading is: a frame of the take, or nowhere. */
const SILENT = Number.NEGATIVE_INFINITY

/** Starts, stops and seeks are faded over this; loops are crossfaded at the seam over it. */
const FADE_MS = 8

/**
 * The playhead: which frames of the take are heard next, and how they are blended where it jumps. Two heads read
 * at once while it does: the old one fades out as the new one fades in, along straight lines.
 */
export class TrackReader {
  private head = SILENT
  private incoming = SILENT
  private fadeFramesDone = 0
  private fading = false
  private loop: FrameRange | null = null
  private pending: number | null = null
  private readonly fadeFrames: number

  /** @param lengthFrames frames of the take; reading stops behind its last one */
  constructor(
    private readonly lengthFrames: number,
    sampleRate: number,
  ) {
    this.fadeFrames = Math.max(1, Math.round((FADE_MS * sampleRate) / 1000))
  }

  /** Whether a head is on the take, or on its way to it. */
  get running(): boolean {
    return this.head !== SILENT || this.incoming !== SILENT
  }

  /** The frame that is read next; the one last read while stopped at the end. */
  get positionFrame(): number {
    return this.fading && this.incoming !== SILENT ? this.incoming : this.head
  }

  /**
   * Goes to `frame`, fading over from wherever it is. Inside the loop but so near its end that the fade would carry
   * the playhead past the seam, it goes to the start of the loop instead.
   */
  goTo(frame: number): void {
    const target = Math.min(Math.max(0, frame), this.lengthFrames - 1)
    const { loop } = this
    const pastSeam = loop && target < loop.to && target + this.fadeFrames > this.seamOf(loop)
    this.jump(pastSeam ? loop.from : target)
  }

  /** Fades out and stops. */
  stop(): void {
    this.jump(SILENT)
  }

  /**
   * Repeats `loop`, at least two fades (16 ms) long, from now on, going to its start where the playhead is outside it; null to go on to the end.
   * @throws RangeError when the loop is shorter than two fades: a start and the seam would overlap
   */
  setLoop(loop: FrameRange | null): void {
    const shortest = 2 * this.fadeFrames
    if (loop && loop.to - loop.from < shortest)
      throw new RangeError(`invalid loop: ${loop.to - loop.from} frames (expected at least ${shortest})`)
    this.loop = loop
    const target = this.pending ?? (this.fading ? this.incoming : this.head)
    if (!loop || target === SILENT) return
    // On the way round the seam, the playhead comes from just before the start.
    const beforeLoop = target < loop.from - this.fadeFrames
    if (beforeLoop || target + this.framesToLanding() > this.seamOf(loop)) this.jump(loop.from)
  }

  /**
   * Reads `frames` frames of `track` into `output` (which is overwritten), as heard from the present position on.
   * Does not move the playhead, so that several tracks can be read in line: call {@link advance} after the last.
   */
  read(track: Track, output: readonly Float32Array[], frames: number): void {
    for (let c = 0; c < output.length; c++) {
      const target = output[c]
      const samples = track.channels[Math.min(c, track.channels.length - 1)]
      if (!target) continue
      if (samples) this.readChannel(samples, track.offsetFrames, target, frames)
      else target.fill(0, 0, frames)
    }
  }

  /** How many frames can be read before the playhead has to turn: never more than `frames`, at least 1. */
  readable(frames: number): number {
    this.turn()
    if (this.fading) return Math.min(frames, this.fadeFrames - this.fadeFramesDone)
    if (this.head === SILENT) return frames
    const end = this.seamFrame() ?? this.lengthFrames
    return Math.max(1, Math.min(frames, end - this.head))
  }

  /** Moves on by `frames` that {@link readable} allowed. */
  advance(frames: number): void {
    if (this.head !== SILENT) this.head += frames
    if (this.fading) {
      if (this.incoming !== SILENT) this.incoming += frames
      this.fadeFramesDone += frames
      if (this.fadeFramesDone >= this.fadeFrames) this.land()
    }
    if (this.head >= this.lengthFrames) this.head = SILENT
  }

  /** Starts whatever is due at this frame: a jump that waited for a fade, or the seam of the loop. */
  private turn(): void {
    if (this.fading) return
    if (this.pending !== null) {
      const target = this.pending
      this.pending = null
      this.begin(target)
    } else if (this.loop && this.head === this.seamFrame()) {
      this.begin(this.loop.from - this.fadeFrames)
    }
  }

  /** The frame at which the loop's last few frames start to blend into what comes before its beginning. */
  private seamFrame(): number | null {
    if (!this.loop) return null
    const seam = this.seamOf(this.loop)
    return this.head <= seam ? seam : null
  }

  private seamOf(loop: FrameRange): number {
    return loop.to - this.fadeFrames
  }

  /** Frames that the playhead moves past its target before it can turn: what is left of the fade to it. */
  private framesToLanding(): number {
    if (this.pending !== null) return this.fadeFrames
    return this.fading ? this.fadeFrames - this.fadeFramesDone : 0
  }

  private jump(target: number): void {
    if (this.fading) this.pending = target
    else if (this.running || target !== SILENT) this.begin(target)
  }

  private begin(target: number): void {
    this.incoming = target
    this.fading = true
    this.fadeFramesDone = 0
  }

  private land(): void {
    this.head = this.incoming
    this.incoming = SILENT
    this.fading = false
  }

  private readChannel(samples: Float32Array, offset: number, target: Float32Array, frames: number): void {
    const { head, incoming, fading, fadeFrames, fadeFramesDone } = this
    const from = head - offset
    const to = incoming - offset
    for (let n = 0; n < frames; n++) {
      const old = head === SILENT ? 0 : (samples[from + n] ?? 0)
      if (!fading) {
        target[n] = old
        continue
      }
      const next = incoming === SILENT ? 0 : (samples[to + n] ?? 0)
      target[n] = old + ((fadeFramesDone + n + 1) / fadeFrames) * (next - old)
    }
  }
}
