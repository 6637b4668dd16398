import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { defaultStage } from '../../../src/core'
import { type App, createApp } from '../../../src/session/app'
import { addStage } from '../../../src/session/chain/chain-edits'
import { wouldBeLost } from '../../../src/session/chain/chain-store'
import { storeSnapshot } from '../../../src/session/chain/snapshots'
import { applySession } from '../../../src/session/document/apply-session'
import { parseSession } from '../../../src/session/document/parse-session'
import { MAX_TRIALS, sessionToJson } from '../../../src/session/document/session-doc'
import { SessionError } from '../../../src/session/document/session-error'
import { sessionOf } from '../../../src/session/document/session-of'
import { FIRST_MONITOR_DB } from '../../../src/session/listening/listen-store'
import { SEED } from '../../setup/random-chains'
import { SilentWorker } from '../../setup/silent-worker'
import { take } from '../trials/trial-app'
import { sessions } from './random-sessions'

let app: App

beforeEach(() => {
  vi.stubGlobal('Worker', SilentWorker)
  vi.stubGlobal('navigator', { hardwareConcurrency: 2 })
  vi.stubGlobal('requestAnimationFrame', () => 0)
  app = createApp()
})
afterEach(() => vi.unstubAllGlobals())

/** As it comes from a file. */
const json = (session = sessionOf(app)): Record<string, unknown> => JSON.parse(sessionToJson(session))

describe('a session document', () => {
  it('is read back as it was written, whatever it holds', () => {
    fc.assert(
      fc.property(sessions, (session) => {
        expect(parseSession(json(session))).toEqual(session)
      }),
      { seed: SEED },
    )
  })

  it('is that of the app again once it was applied, one after another in the same app', () => {
    fc.assert(
      fc.property(sessions, (session) => {
        applySession(app, session)
        expect(sessionOf(app)).toEqual(session)
      }),
      { seed: SEED },
    )
  })

  it('holds all that was done in the app', () => {
    app.take.setState({ take, backing: { name: 'Band', sound: take.sound } })
    app.chain.getState().edit(addStage('gain'))
    app.chain.getState().editVersions(storeSnapshot('a'))
    app.comparing.compare('snapshots')
    app.listening.setDifference(true)
    app.listening.setLoop({ from: 800, to: 4000 })
    app.listening.setBacking({ backingOn: true, backingLevelDb: -3, backingOffsetMs: 12 })
    app.view.setState({ seen: { from: 0.5, to: 4000.5 }, spectrogram: true })
    expect(sessionOf(app)).toMatchObject({
      take: { hash: null, name: 'Take 3.wav' },
      backing: { hash: null, name: 'Band', on: true, levelDb: -3, offsetMs: 12 },
      chain: { stages: [{}, {}, {}, {}, { id: 'gain-1' }] },
      snapshots: { a: { name: '', chain: { stages: [{}, {}, {}, {}, { id: 'gain-1' }] } }, b: null },
      compared: { scope: { kind: 'snapshots' }, listeningPoint: null },
      listening: { side: 'processed', difference: true, loop: { from: 800, to: 4000 } },
      view: { selectedStage: 'gain-1', seen: { from: 0.5, to: 4000.5 }, spectrogram: true },
    })
    expect(parseSession(json())).toEqual(sessionOf(app))
  })

  it('writes an infinite ratio, which JSON cannot hold', () => {
    const compressor = defaultStage('compressor')
    const settings = { ...compressor.settings, ratio: Number.POSITIVE_INFINITY }
    const chain = { ...sessionOf(app).chain, stages: [{ ...compressor, settings }] }
    const session = {
      ...sessionOf(app),
      chain,
      view: { selectedStage: compressor.id, seen: null, spectrogram: false },
    }
    expect(parseSession(json(session))).toEqual(session)
  })

  it('never opens louder than the first sound, neither written nor read', () => {
    app.listening.setMonitorDb(0)
    expect(sessionOf(app).listening.monitorDb).toBe(FIRST_MONITOR_DB)
    const { listening, ...others } = sessionOf(app)
    applySession(app, { ...others, listening: { ...listening, monitorDb: 0 } })
    expect(app.listen.getState().monitorDb).toBe(FIRST_MONITOR_DB)
    expect(() => parseSession({ ...json(), listening: { ...listening, monitorDb: 0 } })).toThrow(
      'listening.monitorDb: expected a number from -60 to -18 (dB), got 0',
    )
  })
})

describe('opening a session', () => {
  it('opens the lanes that were open, none in a document that knows of none', () => {
    app.view.setState({ spectrogram: true })
    const { view, ...others } = sessionOf(app)
    const { spectrogram, ...older } = view
    app.view.setState({ spectrogram: false })
    applySession(app, parseSession(json({ ...others, view })))
    expect([spectrogram, app.view.getState().spectrogram]).toEqual([true, true])
    applySession(app, parseSession({ ...others, view: older }))
    expect(app.view.getState().spectrogram).toBe(false)
  })

  it('keeps the take that is loaded, if it is the one referred to, and its loop within it', () => {
    app.take.setState({ take })
    app.listening.loaded('take')
    app.listening.setLoop({ from: 800, to: 4000 })
    const session = sessionOf(app)
    app.listening.setLoop(null)
    applySession(app, session)
    expect(app.take.getState().take).toBe(take)
    expect(app.listen.getState().loop).toEqual({ from: 800, to: 4000 })
  })

  it('takes the sounds that are given, and awaits those that are not', () => {
    app.take.setState({ take })
    const session = {
      ...sessionOf(app),
      take: { hash: 'abc', name: 'Other.wav' },
      backing: { hash: 'def', name: 'Band.wav', on: true, levelDb: -3, offsetMs: 0 },
    }
    applySession(app, session)
    expect(app.take.getState()).toMatchObject({ take: null, backing: null })
    expect(sessionOf(app)).toEqual(session)
    const other = { ...take, hash: 'abc', name: 'Other.wav' }
    applySession(app, session, { take: other, backing: null })
    expect(app.take.getState()).toMatchObject({
      take: other,
      awaited: { take: null, backing: { hash: 'def', name: 'Band.wav' } },
    })
    expect(sessionOf(app)).toEqual(session)
  })

  it('awaits a backing that is loaded at another rate than the take that is given', () => {
    const band = { name: 'Band.wav', sound: { ...take.sound, sampleRate: 16_000 } }
    app.take.setState({ take: { ...take, sound: band.sound }, backing: band })
    const session = { ...sessionOf(app), take: { hash: 'abc', name: 'Take 3.wav' } }
    applySession(app, session, { take, backing: null })
    expect(app.take.getState()).toMatchObject({ backing: null, awaited: { backing: { name: 'Band.wav' } } })
  })

  it('begins undo anew, with nothing to be lost', () => {
    app.chain.getState().edit(addStage('gain'))
    applySession(app, sessionOf(app))
    expect(app.chain.getState()).toMatchObject({ past: [], future: [] })
    expect(wouldBeLost(app.chain.getState())).toBe(false)
  })

  it('changes nothing where the document is refused', async () => {
    const before = sessionOf(app)
    await expect(app.session.open({ ...json(), chain: 3 })).rejects.toThrow(SessionError)
    expect(sessionOf(app)).toEqual(before)
    app.listening.setSide('bypassed')
    await app.session.open(JSON.parse(sessionToJson(before)))
    expect(app.session.read()).toEqual(before)
  })
})

describe('a document that is refused', () => {
  const changed = (change: object) => () => parseSession({ ...json(), ...change })

  it.each([
    ['another format', { format: 'other' }, 'format: expected "evenhand-session", got "other"'],
    ['an entry too few', { take: { hash: null } }, 'take.name: expected this entry to be there, got nothing'],
    ['no object', { view: 3 }, 'view: expected an object, got 3'],
    ['no version', { version: '1' }, 'version: expected a whole number from 1, got "1"'],
    ['an entry too many', { extra: 1 }, 'extra: expected no such entry, got "extra"'],
    ['a chain that is none', { chain: { stages: [] } }, /^chain\.format: expected /],
    [
      'a stored version that is none',
      { snapshots: { a: 1, b: null } },
      /^snapshots\.a: expected an object, got 1$/,
    ],
    [
      'a stored version whose chain is none',
      { snapshots: { a: { name: 'Loud', chain: 1 }, b: null } },
      /^snapshots\.a\.chain: expected .*got 1$/,
    ],
    [
      'a version whose name is too long',
      { snapshots: { a: { name: 'x'.repeat(41), chain: null }, b: null } },
      /^snapshots\.a\.name: expected at most 40 characters/,
    ],
    [
      'stored versions compared that are not there',
      { compared: { scope: { kind: 'snapshots' }, listeningPoint: null } },
      'snapshots: expected a stored version, since those are compared, got none',
    ],
    [
      'a selected stage that is not there',
      { view: { selectedStage: 'gone', seen: null } },
      'view.selectedStage: expected the id of a stage of the chain, or null without stages, got "gone"',
    ],
    [
      'a range that ends before it begins',
      { view: { selectedStage: 'level', seen: { from: 5, to: 5 } } },
      /^view\.seen: expected a range whose end lies behind its beginning/,
    ],
    [
      'an id that is too long',
      { compared: { scope: { kind: 'chain' }, listeningPoint: 'x'.repeat(65) } },
      /^compared\.listeningPoint: expected at most 64 characters/,
    ],
    [
      'a name that is too long',
      { take: { hash: null, name: 'x'.repeat(1025) } },
      /^take\.name: expected at most/,
    ],
  ])('names the place and what was expected there: %s', (_, change, message) => {
    expect(changed(change)).toThrow(message)
    expect(changed(change)).toThrow(SessionError)
  })

  it('has too many trials, whose contents are not looked at', () => {
    let looked = 0
    const trials = Array.from({ length: MAX_TRIALS + 1 }, () => ({
      get number() {
        return ++looked
      },
    }))
    expect(changed({ trials })).toThrow(`trials: expected at most ${MAX_TRIALS} trials, got a list of`)
    expect(looked).toBe(0)
  })

  it('holds answers that do not fit the rounds of its trial', () => {
    const [session] = fc.sample(
      sessions.filter(({ trials }) => trials.some(({ finished }) => finished)),
      { numRuns: 1, seed: SEED },
    )
    if (!session) throw new Error('one sample was asked for')
    const trials = session.trials.map((trial) => ({ ...trial, answers: trial.answers.slice(1) }))
    expect(() => parseSession({ ...json(session), trials })).toThrow(
      /^trials\[\d\]\.answers: expected \d+ answers/,
    )
  })

  it.each([[null], [3], ['text'], [[]]])('is no object: %o', (value) => {
    expect(() => parseSession(value)).toThrow(/^session: expected a session document, got /)
  })
})
