import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { ListenSettings } from '../../../src/audio/engine/messages'
import { Player } from '../../../src/audio/player/player'
import { PlayerError } from '../../../src/audio/player/player-error'
import { comparisonOf, idleChain } from '../../../src/core'
import { Listening } from '../../../src/session/listening/listening'
import { trialApp } from '../trials/trial-app'

const matching = { bypassedDb: -1.5, processedDb: -0.25, measuredOver: 'take' } as const
let app: ReturnType<typeof trialApp>
let listening: Listening
let player: Player
let told: ListenSettings[]

beforeEach(() => {
  app = trialApp([])
  player = new Player({ onReport: () => undefined, onError: () => undefined })
  told = []
  vi.spyOn(player, 'set').mockImplementation((settings) => void told.push(settings))
  listening = new Listening(app, player)
  listening.loaded('take')
})

const report = {
  type: 'report',
  request: 1,
  momentaryLufs: -20,
  running: true,
  positionFrame: 1234,
  stageGainsDb: Float32Array.of(-3),
  peak: 0.5,
} as const

describe('only what was removed', () => {
  it('of the whole chain is the difference to the chain with nothing to do, of anything else to its bypass', () => {
    const { chain } = app.chain.getState()
    const { bypassed } = comparisonOf(chain, { kind: 'chain' })
    listening.setDifference(true)
    expect(told.at(-1)).toMatchObject({
      heard: 'difference',
      differenceStageId: null,
      bypassed: idleChain(chain),
    })
    listening.setDifference(false)
    expect(told.at(-1)).toMatchObject({ heard: 'processed', bypassed })
    const scope = { kind: 'band', stageId: 'clean-up', bandIndex: 1 } as const
    listening.setScope(scope)
    listening.setDifference(true)
    expect(told.at(-1)?.bypassed).toEqual(comparisonOf(chain, scope).bypassed)
  })
})

describe('sound that does not come', () => {
  const lost = new PlayerError('stopped', 'Sound stopped.')
  const problems = () => app.take.getState().problems.map(({ message }) => message)

  it('is told of until it comes again', async () => {
    const play = vi.spyOn(player, 'play').mockRejectedValueOnce(lost).mockResolvedValue()
    await listening.play()
    expect(problems()).toEqual(['Sound stopped.'])
    expect(app.listen.getState().playing).toBe(false)
    await listening.play()
    expect(play).toHaveBeenCalledTimes(2)
    expect(problems()).toEqual([])
  })

  it('is told of beside what was told of something else, which it leaves alone', async () => {
    vi.spyOn(player, 'play').mockResolvedValue()
    app.take.setState({ problems: [{ message: 'Not a sound file.' }] })
    listening.fail(lost)
    listening.fail(lost)
    expect(problems()).toEqual(['Not a sound file.', 'Sound stopped.'])
    await listening.play()
    expect(problems()).toEqual(['Not a sound file.'])
  })
})

describe('Listening.hear', () => {
  it('tells the player the side and its gains, and the stores nothing', () => {
    app.listen.setState({ matched: false })
    const before = app.listen.getState()
    listening.hear({ side: 'bypassed', matching, muted: false })
    expect(told.at(-1)).toMatchObject({
      heard: 'bypassed',
      bypassedGainDb: -1.5,
      processedGainDb: -0.25,
      monitorDb: -18,
    })
    listening.hear({ side: 'processed', matching, muted: true })
    expect(told.at(-1)).toMatchObject({ heard: 'processed', monitorDb: Number.NEGATIVE_INFINITY })
    expect(app.listen.getState()).toEqual(before)
    listening.hear(null)
    expect(told.at(-1)).toMatchObject({
      heard: 'processed',
      bypassedGainDb: 0,
      processedGainDb: 0,
      monitorDb: -18,
    })
  })

  it('lets the volume be turned while it plays', () => {
    listening.hear({ side: 'bypassed', matching, muted: false })
    listening.setMonitorDb(-40)
    expect(told.at(-1)).toMatchObject({ heard: 'bypassed', monitorDb: -40 })
  })

  it('lets the playhead move and the meters rest', () => {
    listening.receive(report)
    expect(app.listen.getState().stageGainsDb).toEqual([-3])
    listening.hear({ side: 'bypassed', matching, muted: false })
    app.listen.setState({ playing: true })
    listening.receive(report)
    expect(app.listen.getState()).toMatchObject({
      positionFrame: 1234,
      stageGainsDb: [],
      outputPeakDb: Number.NEGATIVE_INFINITY,
    })
    listening.hear(null)
    listening.receive(report)
    expect(app.listen.getState().outputPeakDb).toBeCloseTo(-6.02, 2)
  })
})
