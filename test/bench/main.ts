// `npm run bench`: how fast the core is, as ratios against a reference measured in the same run, and what dragging is like.
// `npm run bench -- --beside <folder> [only]`: this core beside that of another checkout, and nothing else.
import { benchBeside } from './beside'
import { benchDragging } from './dragging'
import { printDragging } from './dragging-table'
import { growth } from './growth'
import { benchInBrowser } from './in-browser'
import { benchOpening } from './opening'
import { milliseconds, printTable, reached } from './table'

/** Ratios wanted of each comparison in the page, in its order. */
const WANTED = [6, 1, 2, undefined, 0.5, undefined, 1, 250]
/** The most of the audio thread's time that listening may take, at the 99th percentile. */
const WANTED_LIVE = 0.25
/** Within so many ms cancelling is answered. */
const WANTED_CANCEL_MS = 20
/** Times each thing is dragged. */
const DRAGS = 3

const [option, folder, only] = process.argv.slice(2)
if (option === '--beside' && folder !== undefined) await benchBeside(folder, only)
else await benchAll()

async function benchAll(): Promise<void> {
  const { results, liveCost, cancelMs } = await benchInBrowser()
  printTable(
    results.map(({ what, oursMs, referenceMs }, index) => ({
      what,
      ours: milliseconds(oursMs),
      reference: milliseconds(referenceMs),
      ratio: referenceMs / oursMs,
      ...(WANTED[index] !== undefined && { wanted: WANTED[index] }),
    })),
  )

  const { median, percentile99 } = liveCost
  const percent = (share: number) => `${(share * 100).toFixed(1)} %`
  console.log(
    `\nListening in the browser, starting chain, both sides, stereo 48 kHz with backing, share of each 2.67 ms: median ${percent(median)}, 99th percentile ${percent(percentile99)} (wanted below ${percent(WANTED_LIVE)}: ${reached(percentile99 < WANTED_LIVE)})`,
  )

  const at = (share: number) => cancelMs[Math.floor(share * (cancelMs.length - 1))] ?? Number.NaN
  console.log(
    `\nCancelling a job of figures of 4 minutes until its worker is at the next: median ${milliseconds(at(0.5))}, 95th percentile ${milliseconds(at(0.95))}, longest ${milliseconds(at(1))} (wanted below ${WANTED_CANCEL_MS} ms: ${reached(at(0.95) < WANTED_CANCEL_MS)})`,
  )

  console.log('\nGrowth with length, starting chain with traces:')
  for (const { minutes, ms, megabytes } of await growth()) {
    console.log(
      `${minutes} min  ${milliseconds(ms)}  ${(ms / minutes).toFixed(0)} ms a minute  ${megabytes.toFixed(0)} MB`,
    )
  }

  console.log('\nDragging, in a page drawn without a graphics processor (the dot is the floor of that):')
  printDragging(await benchDragging(DRAGS))

  const { shownMs, figuresMs, longTasksMs } = await benchOpening()
  console.log(
    `\nOpening a stereo WAV file of 10 minutes: shown after ${milliseconds(shownMs)}, figures after ${milliseconds(figuresMs)}, tasks of the main thread over 50 ms: ${longTasksMs.map(milliseconds).join(', ') || 'none'}`,
  )
}
