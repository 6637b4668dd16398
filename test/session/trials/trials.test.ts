import { beforeEach, describe, expect, it, vi } from 'vitest'
import { switchStage } from '../../../src/session/chain/chain-edits'
import { rightOf } from '../../../src/session/trials/trial-record'
import { take, trialApp } from './trial-app'

const mixed = [true, false, false, true, true, false, true, false]
let app: ReturnType<typeof trialApp>
beforeEach(() => {
  vi.useFakeTimers()
  app = trialApp(mixed)
})

/** What the listener ends up hearing after everything on its way has come. */
function heardNow() {
  vi.runAllTimers()
  return app.heard.at(-1)
}

describe('a trial', () => {
  it('plays what is hidden, past every store, both sides with the gains of its beginning', async () => {
    const { matching } = app.evidence.getState().evidence ?? {}
    app.trials.begin('name-x', 8)
    for (const hidden of mixed) {
      await app.trials.listenTo('x')
      expect(heardNow()).toEqual({ side: hidden ? 'processed' : 'bypassed', matching, muted: false })
      await app.trials.listenTo('bypassed')
      expect(heardNow()?.side).toBe('bypassed')
      await app.trials.listenTo('processed')
      expect(heardNow()?.side).toBe('processed')
      await app.answer('processed')
    }
    expect(app.listen.getState()).toMatchObject({ heard: 'processed', side: 'processed', matched: true })
    expect(matching?.measuredOver).toBe('take')
  })

  it('of two, hides one side behind A and the other behind B', async () => {
    app.trials.begin('which-of-two', 8)
    for (const hidden of mixed) {
      await app.trials.listenTo('a')
      expect(heardNow()?.side).toBe(hidden ? 'processed' : 'bypassed')
      await app.trials.listenTo('b')
      expect(heardNow()?.side).toBe(hidden ? 'bypassed' : 'processed')
      await app.trials.listenTo('x')
      expect(app.trial.getState().running?.choice).toBe('b')
      await app.answer('bypassed')
    }
  })

  it('counts what was right and keeps every round with its time', async () => {
    app.trials.begin('name-x', 8)
    for (const hidden of mixed.slice(0, 6)) await app.answer(hidden ? 'processed' : 'bypassed')
    await app.answer('bypassed')
    await app.answer('processed')
    const { history, shown, running } = app.trial.getState()
    expect({ shown, running }).toEqual({ shown: 1, running: null })
    expect(history).toHaveLength(1)
    expect(history[0]).toMatchObject({ number: 1, finished: true, rounds: 8, compared: 'the whole chain' })
    expect(history[0]?.answers.map(({ seconds }) => seconds)).toEqual(Array(8).fill(1.5))
    expect(history[0] && rightOf(history[0])).toBe(6)
    expect(app.heard.at(-1)).toBeNull()
    expect(app.listening.stop).toHaveBeenCalled()
  })

  it('has the same things in the stores whichever side is hidden, until it is over', async () => {
    const seenWhenX = async (hidden: boolean) => {
      const one = trialApp(Array(8).fill(hidden))
      const states: string[] = []
      one.trial.subscribe((state) => states.push(JSON.stringify(state)))
      one.listen.subscribe((state) => states.push(JSON.stringify(state)))
      one.trials.begin('name-x', 8)
      for (let round = 1; round < 8; round++) {
        await one.trials.listenTo('x')
        await one.trials.listenTo('processed')
        await one.answer('processed')
      }
      expect(one.heard.some((heard) => heard?.side === 'bypassed')).toBe(true)
      return states
    }
    const processed = await seenWhenX(true)
    expect(processed.length).toBeGreaterThan(20)
    expect(processed).toEqual(await seenWhenX(false))
  })

  it('takes the same silent way to the other side and to the same side again', async () => {
    const wayWhenX = async (hidden: boolean) => {
      const one = trialApp([hidden])
      one.trials.begin('name-x', 8)
      await one.trials.listenTo('bypassed')
      one.heard.length = 0
      await one.trials.listenTo('x')
      const steps: [number, boolean | undefined][] = []
      for (let ms = 0; ms < 200; ms += 10) {
        steps.push([one.heard.length, one.heard.at(-1)?.muted])
        vi.advanceTimersByTime(10)
      }
      // Nothing changes side while it can be heard.
      expect(one.heard.map((heard) => heard?.muted)).toEqual([true, true, false])
      expect(one.heard[1]?.side).toBe(one.heard[2]?.side)
      return steps
    }
    expect(await wayWhenX(true)).toEqual(await wayWhenX(false))
  })
})

describe('an answer', () => {
  const round = () => app.trial.getState().running?.round
  const canAnswer = () => app.trial.getState().running?.heard

  it('is not taken before X has sounded for a moment, in every round anew', async () => {
    app.trials.begin('name-x', 8)
    for (const number of [1, 2]) {
      app.trials.answer('processed')
      // Both known sides are not X, and X chosen is not X heard.
      await app.trials.listenTo('bypassed')
      app.sounds(2)
      await app.trials.listenTo('processed')
      app.sounds(2)
      await app.trials.listenTo('x')
      app.trials.answer('processed')
      app.sounds(0.4)
      expect(canAnswer()).toBe(false)
      app.trials.answer('processed')
      expect(round()).toBe(number)
      app.sounds(0.2)
      expect(canAnswer()).toBe(true)
      await app.trials.listenTo('bypassed')
      expect(canAnswer()).toBe(true)
      app.trials.answer('processed')
      expect(round()).toBe(number + 1)
    }
  })

  it('of two is not taken before both have sounded', async () => {
    app.trials.begin('which-of-two', 8)
    await app.trials.listenTo('a')
    app.sounds(2)
    app.trials.answer('processed')
    expect(round()).toBe(1)
    await app.trials.listenTo('b')
    app.sounds(1)
    app.trials.answer('processed')
    expect(round()).toBe(2)
  })

  it('does not take a playhead that is put elsewhere, comes round a loop or stands still for listening', async () => {
    app.trials.begin('name-x', 8)
    await app.trials.listenTo('x')
    app.listen.setState({ positionFrame: 6000 })
    app.listen.setState({ positionFrame: 10 })
    app.listen.setState({ playing: false })
    app.sounds(2)
    expect(canAnswer()).toBe(false)
    app.listen.setState({ playing: true })
    // A take, or a loop, that is shorter than a moment is heard several times.
    for (let turn = 0; turn < 3; turn++) {
      app.listen.setState({ positionFrame: 0 })
      app.sounds(0.3)
    }
    expect(canAnswer()).toBe(true)
  })
})

describe('the page', () => {
  it.each(['a trial that ends', 'a trial that is given up'])(
    'is as it was before %s, but silent',
    async (what) => {
      app.listen.setState({
        positionFrame: 2400,
        heard: 'difference',
        side: 'bypassed',
        matched: false,
        loop: { from: 800, to: 7200 },
        playing: true,
      })
      const before = app.listen.getState()
      const { chain } = app.chain.getState()
      app.trials.begin('name-x', 8)
      for (let round = 1; round < 8; round++) await app.answer('processed')
      if (what === 'a trial that ends') await app.answer('processed')
      else app.trials.abandon()
      expect(app.trial.getState()).toMatchObject({ running: null, shown: 1 })
      expect(app.listen.getState()).toEqual({ ...before, playing: false })
      expect(app.chain.getState().chain).toBe(chain)
      expect(app.heard.at(-1)).toBeNull()
    },
  )
})

describe('the beginning', () => {
  it('is written down at once, as not finished and without what is hidden', async () => {
    app.trials.begin('name-x', 16)
    expect(app.trial.getState().history).toMatchObject([{ finished: false, answers: [], rounds: 16 }])
    await app.answer('processed')
    expect(app.trial.getState().history[0]?.answers).toEqual([])
  })

  it('is refused where the sides cannot be matched, and while another trial runs', () => {
    const { evidence } = app.evidence.getState()
    if (!evidence) throw new Error('the bench has evidence')
    const matching = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' } as const
    app.evidence.setState({ evidence: { ...evidence, matching } })
    app.trials.begin('name-x', 8)
    expect(app.trial.getState()).toMatchObject({ running: null, history: [] })
    app.evidence.setState({ evidence })
    app.trials.begin('name-x', 8)
    app.trials.begin('which-of-two', 9)
    expect(app.trial.getState().history).toHaveLength(1)
  })

  it.each([7, 21, 8.5, Number.NaN])('takes no %d rounds', (rounds) => {
    expect(() => app.trials.begin('name-x', rounds)).toThrow(RangeError)
  })

  it('fixes the gains: figures that change later change nothing', async () => {
    const { evidence } = app.evidence.getState()
    if (!evidence) throw new Error('the bench has evidence')
    const matching = { bypassedDb: -1.5, processedDb: -0.25, measuredOver: 'loop' } as const
    app.evidence.setState({ evidence: { ...evidence, matching } })
    app.trials.begin('name-x', 8)
    app.evidence.setState({ evidence: { ...evidence, matching: { ...matching, processedDb: -9 } } })
    await app.trials.listenTo('processed')
    expect(heardNow()).toEqual({ side: 'processed', matching, muted: false })
    expect(app.trial.getState().history[0]?.matching).toEqual(matching)
  })

  it('stops what plays, and is matched even where the listener was not', () => {
    app.listen.setState({ playing: true, matched: false })
    app.trials.begin('name-x', 8)
    expect(app.listening.stop).toHaveBeenCalledTimes(1)
    expect(heardNow()?.matching.measuredOver).toBe('take')
  })
})

describe('an abandoned trial', () => {
  it('counts as abandoned, with the answers it had', async () => {
    app.trials.begin('name-x', 8)
    await app.answer('processed')
    app.trials.abandon()
    app.trials.abandon()
    expect(app.trial.getState()).toMatchObject({
      running: null,
      history: [{ finished: false, answers: [{ hidden: 'processed', said: 'processed' }] }],
    })
    expect(app.heard.at(-1)).toBeNull()
    expect(vi.getTimerCount()).toBe(0)
    app.trials.begin('name-x', 8)
    expect(app.trial.getState().history.map(({ number }) => number)).toEqual([1, 2])
  })

  it.each([
    ['the chain', () => app.chain.getState().edit(switchStage('level', false))],
    ['the take', () => app.take.setState({ take: { ...take, sound: { ...take.sound } } })],
    ['what is compared', () => app.listen.setState({ scope: { kind: 'stage', stageId: 'level' } })],
    ['the ear', () => app.listen.setState({ listeningPoint: 'level' })],
  ])('is what becomes of it when %s changes', (_, change) => {
    app.trials.begin('name-x', 8)
    change()
    expect(app.trial.getState().running).toBeNull()
  })

  it('is not what becomes of it when the take is measured again or the volume moves', () => {
    app.trials.begin('name-x', 8)
    app.take.setState({ take: { ...take, replacedSamples: 1 } })
    app.listen.setState({ monitorDb: -30 })
    expect(app.trial.getState().running).not.toBeNull()
  })
})
