import { beforeEach, describe, expect, it, vi } from 'vitest'
import { switchStage } from '../../src/session/chain-edits'
import { rightOf } from '../../src/session/trial-record'
import { take, trialBench } from './trial-bench'

const mixed = [true, false, false, true, true, false, true, false]
let bench: ReturnType<typeof trialBench>
beforeEach(() => {
  vi.useFakeTimers()
  bench = trialBench(mixed)
})

/** What the listener ends up hearing after everything on its way has come. */
function heardNow() {
  vi.runAllTimers()
  return bench.heard.at(-1)
}

describe('a trial', () => {
  it('plays what is hidden, past every store, both sides with the gains of its beginning', async () => {
    const { matching } = bench.evidence.getState().evidence ?? {}
    bench.trials.begin('name-x', 8)
    for (const hidden of mixed) {
      await bench.trials.listenTo('x')
      expect(heardNow()).toEqual({ side: hidden ? 'with' : 'without', matching, muted: false })
      await bench.trials.listenTo('without')
      expect(heardNow()?.side).toBe('without')
      await bench.trials.listenTo('with')
      expect(heardNow()?.side).toBe('with')
      await bench.answer('with')
    }
    expect(bench.listen.getState()).toMatchObject({ heard: 'with', side: 'with', matched: true })
    expect(matching?.measuredOver).toBe('take')
  })

  it('of two, hides one side behind A and the other behind B', async () => {
    bench.trials.begin('which-of-two', 8)
    for (const hidden of mixed) {
      await bench.trials.listenTo('a')
      expect(heardNow()?.side).toBe(hidden ? 'with' : 'without')
      await bench.trials.listenTo('b')
      expect(heardNow()?.side).toBe(hidden ? 'without' : 'with')
      await bench.trials.listenTo('x')
      expect(bench.trial.getState().running?.choice).toBe('b')
      await bench.answer('without')
    }
  })

  it('counts what was right and keeps every round with its time', async () => {
    bench.trials.begin('name-x', 8)
    for (const hidden of mixed.slice(0, 6)) await bench.answer(hidden ? 'with' : 'without')
    await bench.answer('without')
    await bench.answer('with')
    const { history, shown, running } = bench.trial.getState()
    expect({ shown, running }).toEqual({ shown: 1, running: null })
    expect(history).toHaveLength(1)
    expect(history[0]).toMatchObject({ number: 1, finished: true, rounds: 8, compared: 'the whole chain' })
    expect(history[0]?.answers.map(({ seconds }) => seconds)).toEqual(Array(8).fill(1.5))
    expect(history[0] && rightOf(history[0])).toBe(6)
    expect(bench.heard.at(-1)).toBeNull()
    expect(bench.listening.stop).toHaveBeenCalled()
  })

  it('has the same things in the stores whichever side is hidden, until it is over', async () => {
    const seenWhenX = async (hidden: boolean) => {
      const one = trialBench(Array(8).fill(hidden))
      const states: string[] = []
      one.trial.subscribe((state) => states.push(JSON.stringify(state)))
      one.listen.subscribe((state) => states.push(JSON.stringify(state)))
      one.trials.begin('name-x', 8)
      for (let round = 1; round < 8; round++) {
        await one.trials.listenTo('x')
        await one.trials.listenTo('with')
        await one.answer('with')
      }
      expect(one.heard.some((heard) => heard?.side === 'without')).toBe(true)
      return states
    }
    const withSide = await seenWhenX(true)
    expect(withSide.length).toBeGreaterThan(20)
    expect(withSide).toEqual(await seenWhenX(false))
  })

  it('takes the same silent way to the other side and to the same side again', async () => {
    const wayWhenX = async (hidden: boolean) => {
      const one = trialBench([hidden])
      one.trials.begin('name-x', 8)
      await one.trials.listenTo('without')
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
  const round = () => bench.trial.getState().running?.round
  const canAnswer = () => bench.trial.getState().running?.heard

  it('is not taken before X has sounded for a moment, in every round anew', async () => {
    bench.trials.begin('name-x', 8)
    for (const number of [1, 2]) {
      bench.trials.answer('with')
      // Both known sides are not X, and X chosen is not X heard.
      await bench.trials.listenTo('without')
      bench.sounds(2)
      await bench.trials.listenTo('with')
      bench.sounds(2)
      await bench.trials.listenTo('x')
      bench.trials.answer('with')
      bench.sounds(0.4)
      expect(canAnswer()).toBe(false)
      bench.trials.answer('with')
      expect(round()).toBe(number)
      bench.sounds(0.2)
      expect(canAnswer()).toBe(true)
      await bench.trials.listenTo('without')
      expect(canAnswer()).toBe(true)
      bench.trials.answer('with')
      expect(round()).toBe(number + 1)
    }
  })

  it('of two is not taken before both have sounded', async () => {
    bench.trials.begin('which-of-two', 8)
    await bench.trials.listenTo('a')
    bench.sounds(2)
    bench.trials.answer('with')
    expect(round()).toBe(1)
    await bench.trials.listenTo('b')
    bench.sounds(1)
    bench.trials.answer('with')
    expect(round()).toBe(2)
  })

  it('does not take a playhead that is put elsewhere, comes round a loop or stands still for listening', async () => {
    bench.trials.begin('name-x', 8)
    await bench.trials.listenTo('x')
    bench.listen.setState({ positionFrame: 6000 })
    bench.listen.setState({ positionFrame: 10 })
    bench.listen.setState({ playing: false })
    bench.sounds(2)
    expect(canAnswer()).toBe(false)
    bench.listen.setState({ playing: true })
    // A take, or a loop, that is shorter than a moment is heard several times.
    for (let turn = 0; turn < 3; turn++) {
      bench.listen.setState({ positionFrame: 0 })
      bench.sounds(0.3)
    }
    expect(canAnswer()).toBe(true)
  })
})

describe('the page', () => {
  it.each(['a trial that ends', 'a trial that is given up'])(
    'is as it was before %s, but silent',
    async (what) => {
      bench.listen.setState({
        positionFrame: 2400,
        heard: 'removed',
        side: 'without',
        matched: false,
        loop: { from: 800, to: 7200 },
        playing: true,
      })
      const before = bench.listen.getState()
      const { chain } = bench.chain.getState()
      bench.trials.begin('name-x', 8)
      for (let round = 1; round < 8; round++) await bench.answer('with')
      if (what === 'a trial that ends') await bench.answer('with')
      else bench.trials.abandon()
      expect(bench.trial.getState()).toMatchObject({ running: null, shown: 1 })
      expect(bench.listen.getState()).toEqual({ ...before, playing: false })
      expect(bench.chain.getState().chain).toBe(chain)
      expect(bench.heard.at(-1)).toBeNull()
    },
  )
})

describe('the beginning', () => {
  it('is written down at once, as not finished and without what is hidden', async () => {
    bench.trials.begin('name-x', 16)
    expect(bench.trial.getState().history).toMatchObject([{ finished: false, answers: [], rounds: 16 }])
    await bench.answer('with')
    expect(bench.trial.getState().history[0]?.answers).toEqual([])
  })

  it('is refused where the sides cannot be matched, and while another trial runs', () => {
    const { evidence } = bench.evidence.getState()
    if (!evidence) throw new Error('the bench has evidence')
    const matching = { withoutDb: 0, withDb: 0, measuredOver: 'nothing' } as const
    bench.evidence.setState({ evidence: { ...evidence, matching } })
    bench.trials.begin('name-x', 8)
    expect(bench.trial.getState()).toMatchObject({ running: null, history: [] })
    bench.evidence.setState({ evidence })
    bench.trials.begin('name-x', 8)
    bench.trials.begin('which-of-two', 9)
    expect(bench.trial.getState().history).toHaveLength(1)
  })

  it.each([7, 21, 8.5, Number.NaN])('takes no %d rounds', (rounds) => {
    expect(() => bench.trials.begin('name-x', rounds)).toThrow(RangeError)
  })

  it('fixes the gains: figures that change later change nothing', async () => {
    const { evidence } = bench.evidence.getState()
    if (!evidence) throw new Error('the bench has evidence')
    const matching = { withoutDb: -1.5, withDb: -0.25, measuredOver: 'loop' } as const
    bench.evidence.setState({ evidence: { ...evidence, matching } })
    bench.trials.begin('name-x', 8)
    bench.evidence.setState({ evidence: { ...evidence, matching: { ...matching, withDb: -9 } } })
    await bench.trials.listenTo('with')
    expect(heardNow()).toEqual({ side: 'with', matching, muted: false })
    expect(bench.trial.getState().history[0]?.matching).toEqual(matching)
  })

  it('stops what plays, and is matched even where the listener was not', () => {
    bench.listen.setState({ playing: true, matched: false })
    bench.trials.begin('name-x', 8)
    expect(bench.listening.stop).toHaveBeenCalledTimes(1)
    expect(heardNow()?.matching.measuredOver).toBe('take')
  })
})

describe('an abandoned trial', () => {
  it('counts as abandoned, with the answers it had', async () => {
    bench.trials.begin('name-x', 8)
    await bench.answer('with')
    bench.trials.abandon()
    bench.trials.abandon()
    expect(bench.trial.getState()).toMatchObject({
      running: null,
      history: [{ finished: false, answers: [{ hidden: 'with', said: 'with' }] }],
    })
    expect(bench.heard.at(-1)).toBeNull()
    expect(vi.getTimerCount()).toBe(0)
    bench.trials.begin('name-x', 8)
    expect(bench.trial.getState().history.map(({ number }) => number)).toEqual([1, 2])
  })

  it.each([
    ['the chain', () => bench.chain.getState().edit(switchStage('level', false))],
    ['the take', () => bench.take.setState({ take: { ...take, sound: { ...take.sound } } })],
    ['what is compared', () => bench.listen.setState({ scope: { kind: 'stage', stageId: 'level' } })],
    ['the ear', () => bench.listen.setState({ earAfterId: 'level' })],
  ])('is what becomes of it when %s changes', (_, change) => {
    bench.trials.begin('name-x', 8)
    change()
    expect(bench.trial.getState().running).toBeNull()
  })

  it('is not what becomes of it when the take is measured again or the volume moves', () => {
    bench.trials.begin('name-x', 8)
    bench.take.setState({ take: { ...take, replacedSamples: 1 } })
    bench.listen.setState({ monitorDb: -30 })
    expect(bench.trial.getState().running).not.toBeNull()
  })
})
