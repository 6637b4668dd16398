import type { AppPage } from '../app-page'
import { REST_MS } from '../drive/engine'
import type { Lab } from '../lab'
import type { Target } from '../page-look'
import { pause } from '../within'
import { type Finding, type Part, tally } from './part'

/** Where on a slider to press, as shares of its length: one of them is far from where it stands. */
const LOW = 0.3
const HIGH = 0.7
/** A place that no setting stands at. */
const ELSEWHERE = { x: 2, y: 2 }
/** How far from there a slider may go: its thumb travels a little less than its length. */
const TOLERANCE = 0.1

/** Sliders of stages that have no picture beside them go where they are pressed. */
export const equaliserRows: Part = {
  title: 'Equaliser: rows hit where aimed',
  look: async (lab) => {
    const page = await lab.freshPage()
    const rows = ['a, Frequency', 'b, Frequency', 'b, Gain', 'b, Q']
    return pressEach(
      lab,
      page,
      'Equaliser',
      rows.map((row) => ({ selector: 'li input[type="range"]', begins: `Band ${row}` })),
    )
  },
}

export const gainRows: Part = {
  title: 'Gain: row hit where aimed',
  look: async (lab) => {
    const page = await lab.freshPage()
    await page.pressByScript({ selector: 'button', begins: 'Add' })
    await page.pressByScript({ selector: 'button', begins: 'Gain' })
    return pressEach(lab, page, 'Gain', [{ selector: 'input[type="range"]', begins: 'Gain' }])
  },
}

async function pressEach(
  lab: Lab,
  page: AppPage,
  stage: string,
  sliders: readonly Target[],
): Promise<Finding> {
  const outcomes: (string | null)[] = []
  for (const slider of sliders) {
    // As it is before anything is pointed at.
    await page.engine.point(ELSEWHERE)
    await page.select('Compressor')
    await page.select(stage)
    await pause(REST_MS)
    const outcome = await pressSlider(page, slider)
    console.log(`  ${lab.name}, ${slider.begins}: ${outcome ?? 'ok'}`)
    outcomes.push(outcome)
  }
  return tally(outcomes)
}

/** What went wrong; null when the slider went where it was pressed and stayed under the pointer. */
async function pressSlider(page: AppPage, slider: Target): Promise<string | null> {
  const before = await positionOf(page, slider)
  const aim = before > (LOW + HIGH) / 2 ? LOW : HIGH
  const point = await page.place(slider, aim)
  if (!(await isAt(page, slider, point))) return 'covered'
  await page.engine.press(point)
  if (!(await isAt(page, slider, point))) return 'moves from under the pointer'
  const after = await positionOf(page, slider)
  if (after === before) return 'not set'
  return Math.abs(after - aim) > TOLERANCE ? `set to ${after.toFixed(2)}, aimed at ${aim}` : null
}

/** From 0, left, to 1. */
function positionOf(page: AppPage, slider: Target): Promise<number> {
  return page.engine.run(
    (target) => {
      const element = window.benchLook?.find(target)
      return element instanceof HTMLInputElement ? element.valueAsNumber : Number.NaN
    },
    { ...slider },
  )
}

function isAt(page: AppPage, slider: Target, { x, y }: { x: number; y: number }): Promise<boolean> {
  return page.engine.run(
    (target, at) => document.elementFromPoint(at.x, at.y) === window.benchLook?.find(target),
    { ...slider },
    { x, y },
  )
}
