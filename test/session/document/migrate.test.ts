import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type App, createApp } from '../../../src/session/app'
import { applySession } from '../../../src/session/document/apply-session'
import { type MigrationStep, migrated } from '../../../src/session/document/migrate'
import { parseSession } from '../../../src/session/document/parse-session'
import { SESSION_VERSION } from '../../../src/session/document/session-doc'
import { sessionOf } from '../../../src/session/document/session-of'
import { SilentWorker } from '../../setup/silent-worker'

/** As the app wrote it while its documents were of version 1: never to be changed. */
const version1 = readFileSync(new URL('./version-1.json', import.meta.url), 'utf8')

interface Id {
  readonly id: string
}

let app: App

beforeEach(() => {
  vi.stubGlobal('Worker', SilentWorker)
  vi.stubGlobal('navigator', { hardwareConcurrency: 2 })
  vi.stubGlobal('requestAnimationFrame', () => 0)
  app = createApp()
})
afterEach(() => vi.unstubAllGlobals())

describe('migration', () => {
  /** Version 2 called the name of a take its title; version 1 had nothing but the name. */
  const steps: ReadonlyMap<number, MigrationStep> = new Map<number, MigrationStep>([
    [1, ({ name }) => ({ format: 'evenhand-session', take: { title: name } })],
    [2, ({ take, ...others }) => ({ ...others, take: { ...Object(take), hash: null } })],
  ])

  it('takes an older document through every step to the current version', () => {
    const first = { format: 'evenhand-session', version: 1, name: 'Take 1' }
    const last = { format: 'evenhand-session', version: 3, take: { title: 'Take 1', hash: null } }
    expect(migrated(first, steps, 3)).toEqual(last)
    expect(migrated({ ...last, version: 2, take: { title: 'Take 1' } }, steps, 3)).toEqual(last)
    expect(migrated(last, steps, 3)).toBe(last)
    expect(first).toEqual({ format: 'evenhand-session', version: 1, name: 'Take 1' })
  })

  it('reads a document of version 1, whose versions had no names and whose trials had no sides', () => {
    const read = parseSession(JSON.parse(version1))
    expect(read.version).toBe(SESSION_VERSION)
    const { a, b } = read.snapshots
    expect([a?.name, b?.name]).toEqual(['', ''])
    expect([a, b].map((each) => each?.chain.stages.map(({ settings }) => settings))).toMatchObject([
      [{}, {}, { ratio: 3 }, {}],
      [{}, {}, { ratio: Number.POSITIVE_INFINITY }, {}],
    ])
    expect(read.trials.map(({ number, compared, sides }) => ({ number, compared, ...sides }))).toEqual([
      { number: 1, compared: 'A (without) and B (with)', bypassed: 'without', processed: 'with' },
      { number: 2, compared: 'the whole chain', bypassed: 'without', processed: 'with' },
    ])
    // Everything else is as it stands in the document.
    const { version, snapshots, trials, ...others } = JSON.parse(version1)
    expect(read).toMatchObject({
      ...others,
      chain: { stages: others.chain.stages.map(({ id }: Id) => ({ id })) },
    })
    applySession(app, read)
    expect(sessionOf(app)).toEqual(read)
  })

  it.each([
    [{ snapshots: 3 }, /^snapshots: expected/],
    [{ snapshots: { a: 3, b: null } }, /^snapshots\.a\.chain: expected/],
    [{ trials: 'none' }, /^trials: expected a list/],
    [{ trials: [4] }, /^trials\[0\]: expected an object/],
  ])('names what is wrong in a document of version 1, too: %j', (change, message) => {
    expect(() => parseSession({ ...JSON.parse(version1), ...change })).toThrow(message)
  })

  it('refuses a document from a newer version in words', () => {
    expect(() => parseSession({ ...JSON.parse(version1), version: 3 })).toThrow(
      'This session was saved by a newer version of Evenhand (format 3; this one reads up to 2).',
    )
    try {
      parseSession({ ...JSON.parse(version1), version: 3 })
    } catch (error) {
      expect(error).toMatchObject({ code: 'newer', path: 'version' })
    }
  })
})
