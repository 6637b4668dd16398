// `npm run soak:browser -- 10`: that many minutes of a real bench in a real browser, moved about at random.
import { fileURLToPath } from 'node:url'
import { LIMITER_CEILING } from '../../src/audio/engine/monitor-limiter'
import { withServedPage } from '../setup/served-page'

const PORT = 4178
const SEED = Number(process.env.SEED ?? 1)
/** What the memory may grow by from the middle to the end, MB: the history of changes is still filling up. */
const MOST_GROWN_MB = 40
/** Clocks of page and device are read at different moments, and run differently by a little. */
const CLOCK_TOLERANCE = 0.01

const minutes = Number(process.argv[2] ?? 10)
const report = await withServedPage(fileURLToPath(new URL('./page', import.meta.url)), PORT, async (page) => {
  await page.waitForFunction(() => window.runSoak !== undefined)
  // Sound starts from a gesture alone.
  await page.mouse.click(10, 10)
  return page.evaluate(([length, seed]) => window.runSoak?.(length, seed), [minutes, SEED] as const)
})
if (!report) throw new Error('the page has no soak')

const { moves, contexts, wrong, peak, largestStep, wallSeconds, audioSeconds, underruns, underrunSeconds } =
  report
const behind = wallSeconds - audioSeconds
const { problems, megabytes } = report
const half = megabytes.slice(megabytes.length / 2)
const grown = half.length > 0 ? Math.max(...half) - (half[0] ?? 0) : Number.NaN
console.log(
  `${minutes} min of a real bench, ${moves} random moves (seed ${SEED}), contexts made: ${contexts}`,
)
console.log(`not a number or infinite: ${wrong}`)
console.log(`highest peak: ${(20 * Math.log10(peak)).toFixed(3)} dBFS (guard at -1 dBFS)`)
console.log(`largest step from sample to sample: ${largestStep.toFixed(3)} of full scale`)
console.log(
  `${audioSeconds.toFixed(1)} s of sound in ${wallSeconds.toFixed(1)} s: ${behind.toFixed(2)} s behind`,
)
console.log(
  `gaps at the device, as the browser counts them: ${underruns}, ${underrunSeconds.toFixed(2)} s in all`,
)
console.log(`memory after each tenth: ${megabytes.map((size) => size.toFixed(0)).join(' ')} MB`)
for (const problem of problems) console.log(`problem: ${problem}`)
const late = Math.abs(behind) > CLOCK_TOLERANCE * wallSeconds
if (
  wrong > 0 ||
  peak > Math.fround(LIMITER_CEILING) ||
  problems.length > 0 ||
  grown > MOST_GROWN_MB ||
  late
) {
  console.log('FAILED')
  process.exitCode = 1
}
