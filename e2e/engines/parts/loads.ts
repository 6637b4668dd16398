import { takeFile } from '../files'
import type { Lab } from '../lab'
import { pause } from '../within'
import { type Part, turns } from './part'

/** Between the first figures and the next take, ms. */
const LOOK_MS = 1500
/** For figures to come on a machine that is busy, ms. */
const FIGURES_LIMIT_MS = 30_000

/** Figures of the demo, of a take opened soon after, and after a change of the chain, each others than before. */
export const loads: Part = {
  title: 'figures after load, take, edit',
  look: (lab, counts) => turns(lab, counts.loads, 'load', () => load(lab)),
}

async function load(lab: Lab): Promise<string | null> {
  const page = await lab.freshPage()
  const changed = async () => {
    const before = (await page.shown()).figures
    return () => page.until(FIGURES_LIMIT_MS, ({ figures, isSettled }) => isSettled && figures !== before)
  }
  await pause(LOOK_MS)
  const byTake = await changed()
  await page.engine.giveTake(takeFile('second.flac'))
  if (!(await byTake())) return 'stuck after the take'
  const byEdit = await changed()
  await page.select('Compressor')
  await page.pressByScript({ selector: '[data-selected="true"] [role="switch"]' })
  if (!(await byEdit())) return 'stuck after the edit'
  return null
}
