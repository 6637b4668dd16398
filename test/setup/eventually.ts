import { vi } from 'vitest'

/** Waits until `check` throws no more, for so long that a busy machine fails no test. */
export function eventually<Result>(check: () => Result | Promise<Result>): Promise<Result> {
  return vi.waitFor(check, { timeout: 60_000 })
}
