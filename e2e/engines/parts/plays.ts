import type { Lab } from '../lab'
import { TimeLimitError, within } from '../within'
import { type Part, turns } from './part'

const PLAY = { selector: 'button', begins: 'Play' }
/** For sound to start, to move on and to be shown, on a machine that is busy, ms. */
const SOUND_LIMIT_MS = 8000
/** For which it is watched after that, ms: what freezes, or stops by itself, does so soon. */
const WATCH_MS = 4000
/** After which a page that does not answer never will, ms. */
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
  const { output } = lab.surroundings
  output.takePeakDbfs()
  const { position: start, level: levelAtRest } = await page.shown()
  if (levelAtRest !== null) return `shows ${levelAtRest} before it plays`
  await page.press(PLAY)
  try {
    const moving = await page.until(
      SOUND_LIMIT_MS,
      ({ position, level, alerts }) => alerts.length > 0 || (position !== start && level !== null),
    )
    if (!moving) {
      const { position, level } = await page.shown()
      if (position === start) return 'position stands still'
      return level === null ? 'no level is shown' : 'neither'
    }
    const { position } = moving
    const spoken = await page.until(WATCH_MS, ({ alerts }) => alerts.length > 0)
    if (spoken) return `says "${spoken.alerts.join(' ')}"`
    if ((await page.shown()).position === position) return 'position stops'
  } catch (error) {
    if (error instanceof TimeLimitError) {
      const isFrozen = await within(
        THAW_MS,
        'the page',
        page.engine.run(() => false),
      ).catch(() => true)
      lab.giveUp()
      return isFrozen ? 'page frozen for good' : 'page frozen for a while'
    }
    throw error
  }
  const peak = output.takePeakDbfs()
  if (peak !== null && peak < SILENCE_DBFS) return 'nothing reaches the output'
  if (peak !== null && peak > CEILING_DBFS) return `reaches the output at ${peak.toFixed(2)} dBFS`
  return null
}
