import type { StoreApi } from 'zustand/vanilla'
import type { Heard, ListenSettings, Report, SideName } from '../../audio/engine/messages'
import type { Player } from '../../audio/player/player'
import { PlayerError } from '../../audio/player/player-error'
import { type BandSweep, type FrameRange, frameCount, gainToDb, type Scope } from '../../core'
import type { ChainState } from '../chain/chain-store'
import type { EvidenceState } from '../evidence-store'
import { type Problem, type TakeState, withProblem } from '../take/take-store'
import { type HiddenHearing, listenSettings, sameListening } from './listen-settings'
import { FIRST_MONITOR_DB, type ListenContent, type ListenState } from './listen-store'
import { loopWithin, withLoopEnd } from './loop'
import { SweepLevel } from './sweep-level'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
}

/** Plays the take and decides what of it is heard. Everything that changes what is heard reaches the player here. */
export class Listening {
  private takeLoaded = false
  private hidden: HiddenHearing | null = null
  private wasRunning = false
  /** What was last told about sound that does not come. */
  private problem: Problem | null = null
  private readonly sweepLevel = new SweepLevel(() => this.pass())

  constructor(
    private readonly stores: Stores,
    private readonly player: Player,
  ) {
    const pass = () => this.pass()
    stores.chain.subscribe((now, before) => now.chain !== before.chain && pass())
    stores.evidence.subscribe((now, before) => now.evidence !== before.evidence && pass())
    stores.listen.subscribe((now, before) => !sameListening(now, before) && pass())
  }

  /** Another take or backing is in place, or none is. */
  loaded(what: 'take' | 'backing'): void {
    const { take, backing } = this.stores.take.getState()
    if (!take) {
      this.stop()
      this.takeLoaded = false
      return
    }
    if (what === 'backing' && this.takeLoaded) {
      this.player.setBacking(backing?.sound ?? null)
      return
    }
    this.takeLoaded = true
    this.setSweep(null)
    this.stores.listen.setState({ playing: false, positionFrame: 0, loop: null, stageGainsDb: [] })
    this.player.load(take.sound, backing?.sound ?? null, this.settings())
  }

  /** Listens as a session document says. The monitor is set no louder than for the first sound. */
  restore({ loop, monitorDb, ...content }: ListenContent): void {
    this.setSweep(null)
    this.stores.listen.setState({ ...content, monitorDb: Math.min(monitorDb, FIRST_MONITOR_DB), loop })
    this.setLoop(loop)
  }

  /** Starts or stops. */
  async togglePlay(): Promise<void> {
    if (this.stores.listen.getState().playing) this.stop()
    else await this.play()
  }

  /** Plays on from the playhead; from the start of the loop where the playhead is outside it. */
  async play(): Promise<void> {
    const { take } = this.stores.take.getState()
    if (!take) return
    const { positionFrame, loop } = this.stores.listen.getState()
    const atEnd = positionFrame >= frameCount(take.sound) - 1
    const inLoop = !loop || (positionFrame >= loop.from && positionFrame < loop.to)
    const from = inLoop && !atEnd ? positionFrame : (loop?.from ?? 0)
    this.stores.listen.setState({ playing: true, positionFrame: from })
    await this.playFrom(from)
  }

  stop(): void {
    this.player.stop()
    this.stores.listen.setState({ playing: false })
  }

  /** Moves the playhead, whether it plays or not. */
  seek(frame: number): void {
    const { take } = this.stores.take.getState()
    if (!take) return
    const positionFrame = Math.round(Math.min(Math.max(0, frame), frameCount(take.sound) - 1))
    this.stores.listen.setState({ positionFrame })
    if (this.stores.listen.getState().playing) void this.playFrom(positionFrame)
  }

  /** Repeats a range of the take; null to play on. Too short a range is none. */
  setLoop(range: FrameRange | null): void {
    const { take } = this.stores.take.getState()
    if (!take) return
    const loop = loopWithin(range, frameCount(take.sound), take.sound.sampleRate)
    this.stores.listen.setState({ loop })
    this.player.setLoop(loop)
  }

  /** Moves one end of the loop to the playing position. */
  setLoopEnd(end: 'from' | 'to'): void {
    const { take } = this.stores.take.getState()
    const { positionFrame, loop } = this.stores.listen.getState()
    if (take) this.setLoop(withLoopEnd(loop, end, positionFrame, take.sound.sampleRate))
  }

  /** Switches looping off and remembers the loop, or on again: the last loop, else the whole take. */
  switchLoop(): void {
    const { take } = this.stores.take.getState()
    const { loop, lastLoop } = this.stores.listen.getState()
    if (!take) return
    if (loop) {
      this.stores.listen.setState({ lastLoop: loop })
      this.setLoop(null)
      return
    }
    const frames = frameCount(take.sound)
    // The last loop may be one of a longer take.
    this.setLoop(lastLoop && lastLoop.to <= frames ? lastLoop : { from: 0, to: frames })
  }

  setSide(side: SideName): void {
    this.stores.listen.setState({ side, heard: side })
  }

  /** The other side. */
  switchSide(): void {
    this.setSide(this.stores.listen.getState().side === 'processed' ? 'bypassed' : 'processed')
  }

  /** Hears the difference between the sides only, or one of the sides again. */
  setDifference(on: boolean): void {
    const { side } = this.stores.listen.getState()
    const heard: Heard = on ? 'difference' : side
    this.stores.listen.setState({ heard })
  }

  /** Plays a side without telling which, until told null. Meters stand still meanwhile: they would tell. */
  hear(hidden: HiddenHearing | null): void {
    if (hidden) this.setSweep(null)
    if (hidden && !this.hidden)
      this.stores.listen.setState({
        outputPeakDb: Number.NEGATIVE_INFINITY,
        momentaryLufs: Number.NEGATIVE_INFINITY,
        stageGainsDb: [],
      })
    this.hidden = hidden
    this.pass()
  }

  /**
   * Sweeps a band, narrowly boosted, along the frequency axis for as long as it is not null. It is only heard: the
   * chain does not change. The level goes down first by what the band goes up, and comes back last.
   */
  setSweep(sweep: BandSweep | null): void {
    if (this.hidden && sweep) return
    this.sweepLevel.set(sweep !== null)
    this.stores.listen.setState({ sweep })
  }

  setScope(scope: Scope): void {
    this.stores.listen.setState({ scope })
  }

  /** Listens behind a stage, or (null) at the end of the chain. */
  setListeningPoint(listeningPoint: string | null): void {
    this.stores.listen.setState({ listeningPoint })
  }

  setMatched(matched: boolean): void {
    this.stores.listen.setState({ matched })
  }

  setMonitorDb(monitorDb: number): void {
    this.stores.listen.setState({ monitorDb })
  }

  setBacking(backing: Partial<Pick<ListenState, 'backingOn' | 'backingLevelDb' | 'backingOffsetMs'>>): void {
    this.stores.listen.setState(backing)
  }

  /** A report from the audio thread. */
  receive({ running, positionFrame, stageGainsDb, peak, momentaryLufs }: Report): void {
    const { playing } = this.stores.listen.getState()
    this.stores.listen.setState({
      ...(playing && running && { positionFrame }),
      ...(!this.hidden && { stageGainsDb: [...stageGainsDb], outputPeakDb: gainToDb(peak), momentaryLufs }),
    })
    if (playing && !running && this.wasRunning)
      this.stores.listen.setState({ playing: false, positionFrame: 0 })
    this.wasRunning = running
  }

  fail(error: PlayerError): void {
    this.stores.listen.setState({ playing: false })
    const problem = { message: error.message }
    this.problem = problem
    this.stores.take.setState(({ problems }) => ({ problems: withProblem(problems, problem) }))
  }

  private async playFrom(frame: number): Promise<void> {
    try {
      await this.player.play(frame)
      // Sound comes again: what was told about it is over.
      if (this.problem)
        this.stores.take.setState(({ problems }) => ({
          problems: problems.filter((problem) => problem !== this.problem),
        }))
    } catch (error) {
      if (!(error instanceof PlayerError)) throw error
      this.fail(error)
    }
  }

  private pass(): void {
    if (this.takeLoaded) this.player.set(this.settings())
  }

  private settings(): ListenSettings {
    const { take } = this.stores.take.getState()
    return listenSettings({
      chain: this.stores.chain.getState().chain,
      listen: this.stores.listen.getState(),
      matching: this.stores.evidence.getState().evidence?.matching ?? null,
      sampleRate: take?.sound.sampleRate ?? 0,
      hidden: this.hidden,
      sweepLevel: this.sweepLevel,
    })
  }
}
