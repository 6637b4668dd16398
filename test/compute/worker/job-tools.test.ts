import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FactName } from '../../../src/compute/facts/fact-values'
import { type FactPiece, factsJob } from '../../../src/compute/jobs/facts-job'
import {
  chainOf,
  finished,
  frameCount,
  measure,
  renderChain,
  type Sound,
  type StageDoc,
} from '../../../src/core'
import { band, equaliserWith, monoOf, stageWith } from '../../setup/chains'
import { directFact, factNames } from '../../setup/direct-facts'
import { hashed, memoryOf, toolsOf } from '../../setup/evidence-here'
import { chains, SEED, sounds, stages } from '../../setup/random-chains'

const RATE = 192_000

/** Room for so many of a take's sounds: none, one, some but not plenty, all of them. */
const ROOMS = [0, 1.5, 3, 100]
/** Room for no facts, for small ones, for all. */
const FACT_BYTES = [0, 3000, 2 ** 26]

interface Question {
  readonly stages: readonly StageDoc[]
  readonly name: FactName
}

/** Questions about sounds that share their first stages: so many stages of one chain, and maybe another one. */
const questions = fc
  .record({
    base: chains(undefined, { minLength: 1, maxLength: 4 }),
    asked: fc.array(
      fc.record({
        count: fc.nat(4),
        another: fc.option(stages(), { freq: 2 }),
        off: fc.option(fc.nat(3), { freq: 2 }),
        name: fc.constantFrom(...factNames),
      }),
      { minLength: 2, maxLength: 6 },
    ),
  })
  .map(({ base, asked }) =>
    asked.map(({ count, another, off, name }): Question => {
      const shared = base.stages
        .slice(0, count)
        .map((stage, k) => (k === off ? { ...stage, on: false } : stage))
      return { stages: another ? [...shared, { ...another, id: 'another' }] : shared, name }
    }),
  )

const settings = fc.record({
  sound: sounds({ min: 4000, max: 9000 }),
  asked: questions,
  room: fc.constantFrom(...ROOMS),
  factBytes: fc.constantFrom(...FACT_BYTES),
})

/** What a worker remembers of `sound`, with room for so many sounds like it. */
function memoryWith(sound: Sound, room: number, factBytes: number) {
  return memoryOf(hashed(sound), room * 4 * frameCount(sound) * sound.channels.length, factBytes)
}

/** Answers questions, one after the other, each with what a render of its own gives. */
function* jobOf(
  sound: Sound,
  memory: ReturnType<typeof memoryWith>,
  asked: readonly Question[],
  keep: boolean,
) {
  const take = memory.take?.hash ?? ''
  const tools = toolsOf(memory)
  for (const { stages, name } of asked) {
    if (keep) tools.keep({ take, stages: stages.slice(0, -1) })
    expect(yield* tools.fact({ take, stages }, name), name).toEqual(directFact(sound, stages, name))
  }
  tools.leaveMemory()
}

describe(`facts in the memory of a worker (seed ${SEED})`, () => {
  it('are those of a render of their own, whatever was asked before and however little room there is', () => {
    const jobs = fc.tuple(settings, questions, fc.boolean())
    fc.assert(
      fc.property(jobs, ([{ sound, asked, room, factBytes }, later, keep]) => {
        const memory = memoryWith(sound, room, factBytes)
        finished(jobOf(sound, memory, asked, keep))
        finished(jobOf(sound, memory, [...later, ...asked], !keep))
      }),
      { seed: SEED, numRuns: 30 },
    )
  })

  it('are so too when several jobs take turns, a step at a time', () => {
    const turns = fc.array(fc.nat(2), { minLength: 20, maxLength: 60 })
    const asked = fc.tuple(settings, turns, fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }))
    fc.assert(
      fc.property(asked, ([{ sound, asked, room, factBytes }, turns, keep]) => {
        const memory = memoryWith(sound, room, factBytes)
        // Each begins elsewhere in the same questions, so that they meet in the same sounds.
        let jobs = keep.map((keeps, k) => {
          const mine = [...asked.slice(k), ...asked.slice(0, k)]
          return jobOf(sound, memory, mine, keeps)
        })
        for (let turn = 0; jobs.length > 0; turn++) {
          const job = jobs[(turns[turn % turns.length] ?? 0) % jobs.length]
          if (job?.next().done) jobs = jobs.filter((other) => other !== job)
          // Turns may all be those of one that has ended.
          if (turn % 50 === 49) jobs = jobs.filter((other) => !other.next().done)
        }
      }),
      { seed: SEED, numRuns: 30 },
    )
  })
})

describe('memory that stages are run on', () => {
  const chain = [stageWith('gain', { gainDb: -3 }), stageWith('compressor', { lookaheadMs: 3 })]
  const take = hashed(monoOf(RATE, 2000, () => 0.1))
  const bufferOf = ({ channels }: Sound) => channels[0]?.buffer

  it('is left for the next job, and had by one at a time', () => {
    const memory = memoryOf(take, 0)
    const address = { take: take.hash, stages: chain }
    const [first, second, third] = [toolsOf(memory), toolsOf(memory), toolsOf(memory)]
    const left = bufferOf(finished(first.sound(address)))
    first.leaveMemory()
    expect(bufferOf(finished(second.sound(address)))).toBe(left)
    expect(bufferOf(finished(third.sound(address)))).not.toBe(left)
  })

  it('is not kept where it is too small, of other channels or very large', () => {
    const memory = memoryOf(take, 0)
    memory.leaveWorking([new Float32Array(100)])
    expect(memory.takeWorking(1, 101)).toBeNull()
    memory.leaveWorking([new Float32Array(100)])
    expect(memory.takeWorking(2, 100)).toBeNull()
    memory.leaveWorking([new Float32Array(100).subarray(3)])
    expect(memory.takeWorking(1, 100)).toHaveLength(1)
    memory.leaveWorking([new Float32Array(2 ** 24 + 1)])
    expect(memory.takeWorking(1, 100)).toBeNull()
  })
})

describe('sounds in the memory of a worker', () => {
  it('are right behind their take too, as far as they go: stages that follow look ahead into that', () => {
    // Cut off while a resonance is loud, which rings on behind it.
    const sung = (n: number) => (n < 20_000 ? 0.5 * Math.sin((2 * Math.PI * 50 * n) / RATE) : 0)
    const sound = monoOf(RATE, 20_000, sung)
    const ring = equaliserWith([band({ frequencyHz: 50, gainDb: 24, q: 10 })])
    const memory = memoryOf(hashed(sound))
    const take = memory.take?.hash ?? ''
    const ahead = Array.from({ length: 8 }, (_, k) =>
      stageWith('compressor', { thresholdDb: -60, ratio: 4, lookaheadMs: 10, attackMs: 0.1 }, `ahead ${k}`),
    )
    for (let count = 0; count <= ahead.length; count++) {
      const stages = [ring, ...ahead.slice(0, count)]
      const found = finished(toolsOf(memory).soundWithLeads({ take, stages }))
      const { channels, leadInFrames = 0, leadOutFrames = 0 } = found
      const [longer] = channels.map(({ length }) => monoOf(RATE, length - leadInFrames, sung))
      const ofLonger = longer && renderChain(longer, chainOf(stages)).sound.channels
      expect(
        channels.map((samples) => samples.subarray(leadInFrames)),
        `${count} ahead`,
      ).toEqual(ofLonger)
      expect(leadOutFrames).toBeGreaterThanOrEqual(0)
    }
  })
})

describe('a job of facts that is told the places of its take', () => {
  it('measures at these, and looks for none', () => {
    const take = hashed(monoOf(48_000, 48_000, (n) => (n < 24_000 ? 0.1 : 0.001) * Math.sin(n / 3)))
    const memory = memoryOf(take)
    const places = { pauses: [0, 1], sibilants: [] }
    const wants = [{ stages: [], names: ['places', 'measures'] as const }]
    const told: FactPiece[] = []
    const known = [{ stages: [], name: 'places', value: places } as const]
    const input = { take: take.hash, wants, known, keep: null }
    finished(
      factsJob(
        input,
        toolsOf<FactPiece>(memory, (piece) => told.push(piece)),
      ),
    )
    expect(told[0]?.value).toBe(places)
    const { noiseFloorDbfs } = measure(take.sound, { pauses: [0, 1] })
    expect(told[1]?.value).toMatchObject({ noiseFloorDbfs })
    expect(noiseFloorDbfs).not.toBe(measure(take.sound).noiseFloorDbfs)
  })
})
