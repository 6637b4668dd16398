import type { StoreApi } from 'zustand/vanilla'
import type { MatchingGains } from '../../compute/evidence'
import { comparisonOf, drawOrder, type HiddenSide } from '../../core'
import type { ChainState } from '../chain/chain-store'
import { comparedWords } from '../comparison/compared-words'
import { sideWords } from '../comparison/side-words'
import type { EvidenceState } from '../evidence-store'
import type { ListenState } from '../listening/listen-store'
import type { Listening } from '../listening/listening'
import type { TakeState } from '../take/take-store'
import { RoundHearing } from './trial-heard'
import {
  choicesOf,
  FEWEST_ROUNDS,
  MOST_ROUNDS,
  sideOf,
  type TrialAnswer,
  type TrialChoice,
  type TrialKind,
  type TrialRecord,
} from './trial-record'
import { trialRefusal } from './trial-refusal'
import type { TrialState } from './trial-store'
import { TrialSwitch } from './trial-switch'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
  readonly trial: StoreApi<TrialState>
}

/** Where chance and time come from. */
export interface TrialSources {
  randomBit(): boolean
  now(): Date
}

/** A fair bit from the browser's own source of cryptographic randomness. */
export function randomBit(): boolean {
  const [byte = 0] = crypto.getRandomValues(new Uint8Array(1))
  return byte % 2 === 1
}

/** What nobody may see while a trial runs. It stays here and in the player. */
interface Hidden {
  readonly order: readonly HiddenSide[]
  readonly answers: readonly TrialAnswer[]
  readonly roundBegan: Date
}

/** Runs blind trials of the current comparison. */
export class Trials {
  private hidden: Hidden | null = null
  private matching: MatchingGains = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' }
  private positionBefore = 0
  private readonly to: TrialSwitch
  private readonly hearing = new RoundHearing()

  constructor(
    private readonly stores: Stores,
    private readonly listening: Pick<Listening, 'hear' | 'play' | 'stop'>,
    private readonly sources: TrialSources,
  ) {
    this.to = new TrialSwitch((side, muted) => listening.hear({ side, matching: this.matching, muted }))
    // Another sound is another comparison: its answers do not belong to this trial.
    stores.chain.subscribe((now, before) => now.chain !== before.chain && this.abandon())
    stores.take.subscribe((now, before) => now.take?.sound !== before.take?.sound && this.abandon())
    stores.listen.subscribe((now, before) => {
      if (now.scope !== before.scope || now.listeningPoint !== before.listeningPoint) this.abandon()
      if (now.playing && before.playing) this.listened(now.positionFrame - before.positionFrame)
    })
  }

  /**
   * Begins a trial, with nothing playing; both sides keep the gains they have now. Does nothing while one runs, or where trialRefusal
   * has a reason not to.
   * @param rounds FEWEST_ROUNDS to MOST_ROUNDS
   * @throws RangeError for another number of rounds
   */
  begin(kind: TrialKind, rounds: number): void {
    if (!Number.isInteger(rounds) || rounds < FEWEST_ROUNDS || rounds > MOST_ROUNDS)
      throw new RangeError(`${rounds} rounds: expected ${FEWEST_ROUNDS} to ${MOST_ROUNDS}`)
    const { chain } = this.stores.chain.getState()
    const { scope, listeningPoint, side, playing, positionFrame } = this.stores.listen.getState()
    const { take } = this.stores.take.getState()
    const state = this.stores.evidence.getState()
    const refusal = trialRefusal({ take }, state, comparisonOf(chain, scope, listeningPoint))
    if (this.hidden || !take || !state.evidence || refusal !== null) return
    this.matching = state.evidence.matching
    const began = this.sources.now()
    const { history } = this.stores.trial.getState()
    const number = (history.at(-1)?.number ?? 0) + 1
    const sides = sideWords(scope)
    const record: TrialRecord = {
      number,
      begunAt: began.toISOString(),
      takeName: take.name,
      compared: comparedWords(chain, scope, listeningPoint),
      sides,
      kind,
      rounds,
      matching: this.matching,
      answers: [],
      finished: false,
    }
    this.hidden = { order: drawOrder(rounds, this.sources.randomBit), answers: [], roundBegan: began }
    this.positionBefore = positionFrame
    this.hearing.begin()
    const [choice] = choicesOf(kind)
    this.stores.trial.setState({
      running: { number, kind, sides, rounds, round: 1, choice, heard: false },
      history: [...history, record],
      shown: null,
    })
    this.listening.stop()
    this.to.begin(side)
    this.switchTo(choice, playing)
  }

  /** Listens to one of the round's choices; starts to play where nothing does. */
  async listenTo(choice: TrialChoice): Promise<void> {
    const { running } = this.stores.trial.getState()
    if (!running || !choicesOf(running.kind).includes(choice)) return
    if (choice !== running.choice) {
      this.stores.trial.setState({ running: { ...running, choice } })
      this.switchTo(choice)
    }
    if (!this.stores.listen.getState().playing) await this.listening.play()
  }

  /**
   * Answers the round: what X (of two: A) is said to be. The next round begins, or the trial ends. Does nothing
   * before what is hidden was heard.
   */
  answer(said: HiddenSide): void {
    const { running } = this.stores.trial.getState()
    const side = this.hidden?.order[this.hidden.answers.length]
    if (!running?.heard || !this.hidden || side === undefined) return
    const now = this.sources.now()
    const seconds = (now.getTime() - this.hidden.roundBegan.getTime()) / 1000
    const answers = [...this.hidden.answers, { hidden: side, said, seconds }]
    this.hidden = { ...this.hidden, answers, roundBegan: now }
    if (answers.length === running.rounds) {
      this.end(true)
      return
    }
    this.hearing.begin()
    const [choice] = choicesOf(running.kind)
    this.stores.trial.setState({
      running: { ...running, round: answers.length + 1, choice, heard: false },
    })
    this.switchTo(choice)
  }

  /** Quits the trial: everything is as it was before, but nothing plays. It stays in the history as abandoned. */
  abandon(): void {
    this.end(false)
  }

  /** Closes the last result, to choose the next trial. */
  prepare(): void {
    this.stores.trial.setState({ shown: null })
  }

  private listened(frames: number): void {
    const { running } = this.stores.trial.getState()
    const { take } = this.stores.take.getState()
    if (!running || !take || running.heard) return
    this.hearing.pass(running.choice, frames / take.sound.sampleRate)
    if (this.hearing.isEnough(running.kind))
      this.stores.trial.setState({ running: { ...running, heard: true } })
  }

  private switchTo(choice: TrialChoice, playing = this.stores.listen.getState().playing): void {
    const side = this.hidden?.order[this.hidden.answers.length]
    if (side !== undefined) this.to.goTo(sideOf(choice, side), playing)
  }

  private end(finished: boolean): void {
    const { running, history } = this.stores.trial.getState()
    if (!running || !this.hidden) return
    const { answers } = this.hidden
    this.hidden = null
    this.to.end()
    this.listening.stop()
    this.listening.hear(null)
    this.stores.listen.setState({ positionFrame: this.positionBefore })
    this.stores.trial.setState({
      running: null,
      shown: running.number,
      history: history.map((record) =>
        record.number === running.number ? { ...record, answers, finished } : record,
      ),
    })
  }
}
