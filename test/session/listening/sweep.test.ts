import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { ListenSettings } from '../../../src/audio/engine/messages'
import { Player } from '../../../src/audio/player/player'
import { SWEEP_GAIN_DB } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { createChainStore } from '../../../src/session/chain/chain-store'
import { createEvidenceStore } from '../../../src/session/evidence-store'
import { createListenStore } from '../../../src/session/listening/listen-store'
import { Listening } from '../../../src/session/listening/listening'
import { createTakeStore } from '../../../src/session/take/take-store'

const sound = { sampleRate: 48_000, channels: [new Float32Array(48_000)] }
const at = (frequencyHz: number) => ({ stageId: 'clean-up', bandIndex: 0, frequencyHz })

let listening: Listening
let chain: ReturnType<typeof createChainStore>
let listen: ReturnType<typeof createListenStore>
/** Every settings that reached the player, in order. */
let passed: ListenSettings[]

const bandOf = (settings: ListenSettings | undefined) => {
  const stage = settings?.processed.stages.find(({ id }) => id === 'clean-up')
  return stage?.kind === 'equaliser' ? stage.settings.bands[0] : undefined
}

beforeEach(() => {
  vi.useFakeTimers()
  passed = []
  const player = new Player({ onReport: () => undefined, onError: () => undefined })
  vi.spyOn(player, 'set').mockImplementation((settings) => void passed.push(settings))
  chain = createChainStore(startingChain())
  listen = createListenStore()
  const take = createTakeStore()
  listening = new Listening({ chain, take, listen, evidence: createEvidenceStore() }, player)
  take.setState({ take: { name: 'take.wav', sound, header: null, replacedSamples: 0, measures: null } })
  listening.loaded('take')
  listen.setState({ monitorDb: -12 })
})
afterEach(() => {
  vi.useRealTimers()
})

describe('a sweep', () => {
  it('lowers the level by as much as the band goes up, before it goes up', () => {
    const usual = bandOf(passed.at(-1))
    passed = []
    listening.setSweep(at(2000))
    expect(passed.map(({ monitorDb }) => monitorDb)).toEqual([-12 - SWEEP_GAIN_DB])
    expect(bandOf(passed[0])).toEqual(usual)
    vi.advanceTimersByTime(100)
    expect(bandOf(passed.at(-1))).toMatchObject({
      on: true,
      shape: 'bell',
      frequencyHz: 2000,
      gainDb: SWEEP_GAIN_DB,
    })
    expect(passed.at(-1)).toMatchObject({ monitorDb: -12 - SWEEP_GAIN_DB, heard: 'processed' })
  })

  it('follows, and leaves the chain and its undo history as they are', () => {
    const before = chain.getState()
    listening.setSweep(at(2000))
    vi.advanceTimersByTime(100)
    listening.setSweep(at(3150))
    expect(bandOf(passed.at(-1))?.frequencyHz).toBe(3150)
    expect(chain.getState()).toBe(before)
  })

  it('puts everything back when let go: the band at once, the level last', () => {
    const settled = passed.at(-1)
    listening.setSweep(at(2000))
    vi.advanceTimersByTime(100)
    passed = []
    listening.setSweep(null)
    expect(passed.at(-1)).toEqual({ ...settled, monitorDb: -12 - SWEEP_GAIN_DB })
    vi.advanceTimersByTime(100)
    expect(passed.at(-1)).toEqual(settled)
  })

  it('let go before the band was up, never lifts it', () => {
    listening.setSweep(at(2000))
    listening.setSweep(null)
    vi.advanceTimersByTime(1000)
    expect(passed.every((settings) => bandOf(settings)?.gainDb !== SWEEP_GAIN_DB)).toBe(true)
    expect(passed.at(-1)?.monitorDb).toBe(-12)
  })

  it('is heard with, wherever the ear is and whatever is heard otherwise', () => {
    listen.setState({ heard: 'difference', scope: { kind: 'stage', stageId: 'level' } })
    chain
      .getState()
      .edit((now) => ({ chain: { ...now, stages: [...now.stages].reverse() }, words: 'reversed' }))
    listen.setState({ listeningPoint: 'sibilance' })
    listening.setSweep(at(2000))
    vi.advanceTimersByTime(100)
    expect(passed.at(-1)?.heard).toBe('processed')
    expect(passed.at(-1)?.processed.stages.find(({ id }) => id === 'clean-up')?.on).toBe(true)
  })

  it('is not to be had while a trial hides what is heard', () => {
    const matching = { bypassedDb: 0, processedDb: 0, measuredOver: 'take' as const }
    listening.setSweep(at(2000))
    listening.hear({ side: 'processed', matching, muted: false })
    listening.setSweep(at(2000))
    vi.advanceTimersByTime(1000)
    expect(listen.getState().sweep).toBeNull()
    expect(bandOf(passed.at(-1))?.gainDb).not.toBe(SWEEP_GAIN_DB)
  })
})
