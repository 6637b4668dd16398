import type { Lab } from '../lab'

/** How often that is done which does not go wrong each time. */
export interface Counts {
  readonly plays: number
  readonly loads: number
}

/** One cell of the result: whether it is as it should be, and what was found, in a few words. */
export interface Finding {
  readonly ok: boolean
  readonly found: string
}

/** Something looked at in each engine. */
export interface Part {
  /** Row of the result. */
  readonly title: string
  look(lab: Lab, counts: Counts): Promise<Finding>
}

/** Words for how many went well, and what befell the others, each with its count. */
export function tally(outcomes: readonly (string | null)[]): Finding {
  const wrong = outcomes.filter((outcome) => outcome !== null)
  const kinds = [...new Set(wrong)]
  const found = kinds.map((kind) => `${wrong.filter((outcome) => outcome === kind).length} x ${kind}`)
  const good = `${outcomes.length - wrong.length} of ${outcomes.length}`
  return { ok: outcomes.length > 0 && wrong.length === 0, found: [good, ...found].join('; ') }
}

/** `visit` for each turn; a turn that fails, however it does, takes the browser with it. */
export async function turns(
  lab: Lab,
  count: number,
  what: string,
  visit: () => Promise<string | null>,
): Promise<Finding> {
  const outcomes: (string | null)[] = []
  for (let turn = 1; turn <= count; turn++) {
    const outcome = await visit().catch((error: unknown) => {
      lab.giveUp()
      return error instanceof Error ? error.message : String(error)
    })
    outcomes.push(outcome)
    console.log(`  ${lab.name}, ${what} ${turn} of ${count}: ${outcome ?? 'ok'}`)
  }
  return tally(outcomes)
}
