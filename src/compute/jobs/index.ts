import type { Steps } from '../../core'
import { deliveryJob } from './delivery-job'
import { factsJob } from './facts-job'
import type { Job, JobTools } from './job'
import { lanesJob } from './lanes-job'
import { makeupJob } from './makeup-job'
import { samplesJob } from './samples-job'
import { samplesOverJob } from './samples-over-job'
import { spectrogramJob } from './spectrogram-job'

/** Every kind of job. A new kind is its file and its line here. */
const jobs = {
  facts: factsJob,
  lanes: lanesJob,
  makeup: makeupJob,
  spectrogram: spectrogramJob,
  samples: samplesJob,
  delivery: deliveryJob,
  samplesOver: samplesOverJob,
}

export type JobName = keyof typeof jobs
export type JobInput<Name extends JobName> = Parameters<(typeof jobs)[Name]>[0]
export type JobResult<Name extends JobName> =
  ReturnType<(typeof jobs)[Name]> extends Generator<number, infer Result, void> ? Result : never
export type JobPiece<Name extends JobName> =
  Parameters<(typeof jobs)[Name]>[1] extends JobTools<infer Piece> ? Piece : never

/**
 * Begins a job as it came over the port. Messages carry any input, piece and result: those who ask go by the types above,
 * and this is where they meet the table again.
 */
export function beginJob(kind: JobName, input: unknown, tools: JobTools<unknown>): Steps<unknown> {
  const job = jobs[kind] as Job<unknown, unknown, unknown>
  return job(input, tools)
}
