import type { HashedTake, SoundAddress } from '../../src/compute/address'
import type { Evidence } from '../../src/compute/evidence'
import { FactStore } from '../../src/compute/facts/fact-store'
import type { FactName, FactValues, Want } from '../../src/compute/facts/fact-values'
import { type FactPiece, factsJob } from '../../src/compute/jobs/facts-job'
import { EvidenceSelector, wantsOf } from '../../src/compute/select/select-evidence'
import { WorkerTools } from '../../src/compute/worker/job-tools'
import { WorkerMemory } from '../../src/compute/worker/worker-memory'
import { type Comparison, type FrameRange, finished, type Sound, sampleHashSteps } from '../../src/core'

/** Room for all facts of a test. */
const FACT_BYTES = 256 * 2 ** 20

/** A sound with its hash, as the page and the workers hold it. */
export function hashed(sound: Sound): HashedTake {
  return { hash: finished(sampleHashSteps(sound)), sound }
}

/** What a worker remembers that was given `take`. */
export function memoryOf(
  take: HashedTake,
  ...budgets: ConstructorParameters<typeof WorkerMemory>
): WorkerMemory {
  const memory = new WorkerMemory(...budgets)
  memory.adopt(take)
  return memory
}

/** What a job works with, in the memory of a worker; what it tells goes to `tell`. */
export function toolsOf<Piece>(
  memory: WorkerMemory,
  tell: (piece: Piece) => void = () => undefined,
  isWanted: () => boolean = () => true,
): WorkerTools<Piece> {
  if (!memory.take) throw new Error('the worker has no take')
  return new WorkerTools<Piece>(memory, memory.take.sound, { tell, isWanted })
}

/** Everything that a job of facts tells. */
export function factsHere(
  memory: WorkerMemory,
  wants: readonly Want[],
  keep: Want['stages'] | null = null,
): FactPiece[] {
  const pieces: FactPiece[] = []
  const take = memory.take?.hash ?? ''
  const tools = toolsOf<FactPiece>(memory, (piece) => pieces.push(structuredClone(piece)))
  finished(factsJob({ take, wants, known: [], keep }, tools))
  return pieces
}

/** One fact, of a range of the sound where one is given. */
export function factHere<Name extends FactName>(
  memory: WorkerMemory,
  stages: SoundAddress['stages'],
  name: Name,
  range?: FrameRange,
): FactValues[Name] {
  const address = { take: memory.take?.hash ?? '', stages, ...(range && { range }) }
  return finished(toolsOf(memory).fact(address, name))
}

/** Evidence of a comparison, its facts worked out in this thread as a worker does. */
export function evidenceHere(
  sound: Sound,
  comparison: Comparison,
  loop: FrameRange | null = null,
  memory: WorkerMemory = memoryOf(hashed(sound)),
): Evidence {
  const { take } = memory
  if (!take) throw new Error('the worker has no take')
  const facts = new FactStore(FACT_BYTES)
  for (const wants of [wantsOf(comparison.processed, true), wantsOf(comparison.bypassed, false)])
    for (const { want, name, value } of factsHere(memory, wants))
      facts.put({ take: take.hash, stages: wants[want]?.stages ?? [] }, name, value)
  const evidence = new EvidenceSelector(facts).select(take, comparison, loop)
  if (!evidence) throw new Error('a fact is missing')
  return evidence
}
