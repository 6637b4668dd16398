import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Compute } from '../../src/compute/compute'
import { Pool } from '../../src/compute/pool/pool'
import { StageDetails } from '../../src/compute/stage-details'
import { chainOf, comparisonOf, type StageDoc } from '../../src/core'
import { stageWith } from '../setup/chains'
import { directFact } from '../setup/direct-facts'
import { eventually } from '../setup/eventually'
import { noise } from '../setup/signals'
import { WorkersHere } from '../setup/workers-here'

const RATE = 12_000
const take = noise(RATE, 3, 1, 3, (at) => (at < 1 ? 0.5 : 0.1))
const first = stageWith('gain', { gainDb: -3 }, 'first')

let workers: WorkersHere
let pool: Pool
let compute: Compute
let details: StageDetails

beforeEach(async () => {
  workers = new WorkersHere()
  pool = new Pool(workers.make, 2)
  compute = new Compute(pool)
  details = new StageDetails(compute)
  await compute.setTake(take)
})
afterEach(() => {
  pool.end()
  workers.end()
})

const jobs = () => workers.asked.filter(({ type }) => type === 'job')
const studies = () => jobs().filter((job) => 'priority' in job && job.priority === 'study')
const upTo = (stage: StageDoc) => chainOf([first, stage, stageWith('gain', {}, 'last')])

describe('the detail of a stage', () => {
  it.each([
    ['compressor', stageWith('compressor', { sideChainHighPassHz: 100 }, 'it')],
    ['de-esser', stageWith('de-esser', {}, 'it')],
    ['saturator', stageWith('saturator', { driveDb: 12 }, 'it')],
    ['gain', stageWith('gain', { gainDb: 4 }, 'it')],
    ['equaliser', stageWith('equaliser', {}, 'it')],
  ] as const)('%s: that of renders of its own, whether it is on or off', async (kind, stage) => {
    const found = await details.find(upTo({ ...stage, on: false }), 'it')
    const fact = <Name extends Parameters<typeof directFact>[2]>(name: Name, stages = [first, stage]) =>
      directFact(take, stages, name)
    expect(found).toEqual({
      level: kind === 'compressor' || kind === 'de-esser' ? fact('detectorLevel') : null,
      sibilants: kind === 'de-esser' ? fact('sibilantLevels') : null,
      harmonics: kind === 'saturator' ? fact('addedHarmonics') : null,
      levels: kind === 'gain' ? { before: fact('measures', [first]), after: fact('measures') } : null,
    })
    expect(found?.level ?? null).toEqual(
      kind === 'compressor' || kind === 'de-esser' ? expect.anything() : null,
    )
  })

  it('is known at once, the very same, once anything but its detector has changed', async () => {
    const found = await details.find(upTo(stageWith('compressor', { thresholdDb: -20 }, 'it')), 'it')
    const asked = jobs().length
    const moved = upTo(stageWith('compressor', { thresholdDb: -40, ratio: 9, makeupDb: 3 }, 'it'))
    expect(details.known(moved, 'it')?.level).toBe(found?.level)
    await details.find(moved, 'it')
    expect(jobs()).toHaveLength(asked)
    expect(details.known(upTo(stageWith('compressor', { detector: 'rms' }, 'it')), 'it')).toBeUndefined()
  })

  it('comes after evidence, is given up for a newer one, and does not run the stage itself', async () => {
    const chain = upTo(stageWith('compressor', {}, 'it'))
    const [late, newest] = [
      details.find(upTo(stageWith('de-esser', {}, 'it')), 'it'),
      details.find(chain, 'it'),
    ]
    expect(await late).toBeNull()
    expect((await newest)?.level).not.toBeNull()
    expect(studies().length).toBeGreaterThan(0)
  })

  it('outlives workers that are killed', async () => {
    const answer = details.find(upTo(stageWith('de-esser', {}, 'it')), 'it')
    await eventually(() => expect(jobs().length).toBeGreaterThan(1))
    for (const worker of workers.alive) worker.terminate()
    const stages = [first, stageWith('de-esser', {}, 'it')]
    expect((await answer)?.sibilants).toEqual(directFact(take, stages, 'sibilantLevels'))
  })

  it('takes over the loudness that the evidence has, in place of working it out again', async () => {
    const chain = upTo(stageWith('saturator', {}, 'it'))
    const listener = { onProgress() {}, onLiveTraces() {}, onTracesOver() {} }
    await compute.evidence(
      { comparison: comparisonOf(chain, { kind: 'chain' }), loop: null, live: null },
      listener,
    )
    await details.find(chain, 'it')
    expect(studies()[0]).toMatchObject({
      input: { known: [{ name: 'places' }, { name: 'integratedLufs', value: expect.any(Number) }] },
    })
  })
})
