// `npm run engines -- --plays 10`: the built app in Chromium, Firefox and WebKit, one after another.
import { loadavg } from 'node:os'
import { printCells } from '../../test/bench/table'
import { Lab } from './lab'
import { missingPackages } from './needs'
import { type Options, parseOptions, USAGE } from './options'
import { parts } from './parts'
import type { Finding, Part } from './parts/part'
import { withServedBuild } from './served-build'
import { type Surroundings, withSurroundings } from './surroundings'
import { within } from './within'

/** For one part in one engine, a turn of each of its counts included, ms. */
const PART_LIMIT_MS = 300_000
const TURN_LIMIT_MS = 180_000

async function lookAt(lab: Lab, part: Part, { counts }: Options): Promise<Finding> {
  const limitMs = PART_LIMIT_MS + (counts.plays + counts.loads) * TURN_LIMIT_MS
  try {
    return await within(limitMs, part.title, part.look(lab, counts))
  } catch (error) {
    lab.giveUp()
    return { ok: false, found: error instanceof Error ? error.message : String(error) }
  }
}

/** The findings of every engine, part by part. */
async function lookAtAll(
  address: string,
  options: Options,
  surroundings: Surroundings,
): Promise<readonly (readonly Finding[])[]> {
  const wanted = options.parts.flatMap((name) => parts[name] ?? [])
  const columns: Finding[][] = []
  for (const name of options.engines) {
    const lab = new Lab(name, address, surroundings)
    const column: Finding[] = []
    for (const part of wanted) {
      const finding = await lookAt(lab, part, options)
      console.log(`${name}, ${part.title}: ${finding.ok ? '' : 'NOT '}ok, ${finding.found}`)
      column.push(finding)
    }
    lab.giveUp()
    columns.push(column)
  }
  const cell = (finding: Finding | undefined) =>
    finding ? `${finding.ok ? 'ok' : 'NOT ok'}: ${finding.found}` : ''
  console.log(`\n${address}, sink ${options.sink}, load average ${loadavg()[0]?.toFixed(1)}`)
  printCells([
    ['', ...options.engines],
    ...wanted.map(({ title }, row) => [title, ...columns.map((column) => cell(column[row]))]),
  ])
  return columns
}

async function main(options: Options): Promise<void> {
  const missing = missingPackages(options.engines)
  if (missing.length > 0) {
    console.error(`Missing on this machine: ${missing.join(', ')}. On Debian, as root:`)
    console.error(`  apt-get install --no-install-recommends ${missing.join(' ')}`)
    process.exit(1)
  }
  const columns = await withSurroundings(options.sink, (surroundings) =>
    options.address === null
      ? withServedBuild((address) => lookAtAll(address, options, surroundings))
      : lookAtAll(options.address, options, surroundings),
  )
  // Not by itself: what a frozen browser was asked for is still awaited.
  process.exit(columns.flat().every(({ ok }) => ok) ? 0 : 1)
}

try {
  await main(parseOptions(process.argv.slice(2)))
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  if (error instanceof TypeError) console.error(USAGE)
  process.exit(1)
}
