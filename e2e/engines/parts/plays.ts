import type { AppPage } from '../app-page'
import type { Lab } from '../lab'
import type { SoundOutput } from '../sound-output'
import { TimeLimitError, within } from '../within'
import { type Part, turns } from './part'

const PLAY = { selector: 'button', begins: 'Play' }
/** For sound to start, to move on and to be shown, on a machine that is busy, ms. */
const SOUND_LIMIT_MS = 8000
/** For which it is watched after that, ms: what freezes, or stops by itself, does so soon. */
const WATCH_MS = 4000
/** After which a page that does not answer is frozen, ms. */
const FROZEN_MS = 5000
/** After which it is so for good, ms. */
const THAW_MS = 20_000
/** As the page limits it (README), and a little for the sink's own rounding, dBFS. */
const CEILING_DBFS = -0.99
/** Below this nothing was heard, dBFS. */
const SILENCE_DBFS = -90

/** The first press of play in a fresh page, again and again. */
export const plays: Part = {
  title: 'first press of play',
  look: (lab, counts) => turns(lab, counts.plays, 'play', () => play(lab)),
}

/** What went wrong; null when nothing did. */
async function play(lab: Lab): Promise<string | null> {
  const page = await lab.freshPage()
  try {
    return await pressAndWatch(page.answeringWithin(FROZEN_MS), lab.surroundings.output)
  } catch (error) {
    if (!(error instanceof TimeLimitError)) throw error
    const answer = page.engine.run(() => true)
    const thaws = await within(THAW_MS, 'the page', answer).catch(() => false)
    lab.giveUp()
    return thaws ? 'page frozen for a while' : 'page frozen for good'
  }
}

/** @throws TimeLimitError when the page is frozen */
async function pressAndWatch(page: AppPage, output: SoundOutput): Promise<string | null> {
  const atRest = await page.shown()
  if (atRest.level !== null) return `shows ${atRest.level} before it plays`
  output.takePeakDbfs()
  await page.press(PLAY)
  const begun = await page.until(
    SOUND_LIMIT_MS,
    ({ position, level, alerts }) => alerts.length > 0 || (position !== atRest.position && level !== null),
  )
  if (!begun)
    return (await page.shown()).position === atRest.position ? 'position stands still' : 'no level is shown'
  const spoken = await page.until(WATCH_MS, ({ alerts }) => alerts.length > 0)
  if (spoken) return `says "${spoken.alerts.join(' ')}"`
  if ((await page.shown()).position === begun.position) return 'position stops'
  const peakDbfs = output.takePeakDbfs()
  if (peakDbfs === null) return null
  if (peakDbfs < SILENCE_DBFS) return 'nothing reaches the output'
  return peakDbfs > CEILING_DBFS ? `reaches the output at ${peakDbfs.toFixed(2)} dBFS` : null
}
