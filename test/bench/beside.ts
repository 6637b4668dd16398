import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import * as ours from '../../src/core'
import { startingChain } from '../../src/demo'
import { COMPRESSOR_CHAIN, DE_ESSER_CHAIN, FIVE_SECTION_CHAIN, GAIN_CHAIN, SATURATOR_CHAIN } from './chains'
import { longTake } from './long-take'
import { printCells } from './table'

type Core = typeof ours

/** Rounds in which everything is run once by either build, by turns. */
const ROUNDS = 150
const WARM_UP_ROUNDS = 10
/** What is run at a time: short, so that a busy machine leaves some rounds undisturbed. */
const PIECE_SECONDS = 1
const PIECE_STARTS_SECONDS = 4
/** Frames that the audio thread is asked for at a time. */
const QUANTUM_FRAMES = 128

/**
 * Times another checkout's core beside this one's in one run and prints the minima of both, with their ratio. The same
 * chain documents and the same sound go through both.
 * @param folder of the other checkout, with its packages installed
 * @param only runs what has this in its name
 */
export async function benchBeside(folder: string, only = ''): Promise<void> {
  const url = pathToFileURL(resolve(folder, 'src/core/index.ts')).href
  const theirs: Core = await import(url)
  const take = pieceOfTake()
  const pairs = works(ours, take).map((work, index) => ({ ...work, theirs: works(theirs, take)[index]?.run }))
  const lines = pairs
    .filter(({ what }) => what.includes(only))
    .map(({ what, run, theirs: other }) => {
      const [oursMs, theirsMs] = minimalPair(run, other ?? run)
      const texts = [oursMs, theirsMs].map((ms) => `${ms.toFixed(2)} ms`)
      return [what, ...texts, (oursMs / theirsMs).toFixed(3)]
    })
  console.log(`${PIECE_SECONDS} s of sound, minima of ${ROUNDS} rounds; beside: ${folder}`)
  printCells([['what', 'this', 'beside', 'this / beside'], ...lines])
}

/** Sung at full voice, so that every stage has something to do. */
function pieceOfTake(): ours.Sound {
  const take = longTake(1)
  const from = PIECE_STARTS_SECONDS * take.sampleRate
  return ours.excerpt(take, from, from + PIECE_SECONDS * take.sampleRate)
}

interface Work {
  readonly what: string
  readonly run: () => void
}

function works(core: Core, take: ours.Sound): Work[] {
  const chains: [string, ours.ChainDoc][] = [
    ['starting chain', startingChain()],
    ['five-section equaliser', FIVE_SECTION_CHAIN],
    ['compressor', COMPRESSOR_CHAIN],
    ['de-esser', DE_ESSER_CHAIN],
    ['saturator', SATURATOR_CHAIN],
    ['gain', GAIN_CHAIN],
  ]
  return [
    ...chains.map(([what, chain]) => ({
      what: `${what}, rendered with traces`,
      run: () => void core.renderChain(take, chain),
    })),
    ...chains.map(([what, chain]) => ({ what: `${what}, live`, run: live(core, take, chain) })),
    { what: 'everything measured', run: () => void core.measure(take) },
  ]
}

/** The chain as the audio thread runs it: block by block, ready for settings to change. */
function live(core: Core, take: ours.Sound, chain: ours.ChainDoc): () => void {
  const { sampleRate } = take
  // Older builds know the lookahead kept ready by another name.
  const host = { sampleRate, channelCount: 1, maxLookaheadMs: 10, lookaheadReserveMs: 10 }
  const processor = new core.ChainProcessor(chain, host)
  const block = [new Float32Array(QUANTUM_FRAMES)]
  const gains = new Float32Array(chain.stages.length)
  const [samples = new Float32Array()] = take.channels
  return () => {
    for (let from = 0; from + QUANTUM_FRAMES <= samples.length; from += QUANTUM_FRAMES) {
      block[0]?.set(samples.subarray(from, from + QUANTUM_FRAMES))
      processor.process(block, QUANTUM_FRAMES, gains)
    }
  }
}

/** Least times of two pieces of work run by turns, ms. */
function minimalPair(first: () => void, second: () => void): [number, number] {
  const least: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let round = -WARM_UP_ROUNDS; round < ROUNDS; round++) {
    for (const [index, work] of [first, second].entries()) {
      const start = performance.now()
      work()
      const ms = performance.now() - start
      if (round >= 0 && ms < (least[index] ?? 0)) least[index] = ms
    }
  }
  return least
}
