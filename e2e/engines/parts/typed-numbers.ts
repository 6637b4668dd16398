import type { AppPage } from '../app-page'
import { type Part, tally } from './part'

interface Typed {
  readonly stage: string
  readonly setting: string
  readonly text: string
  /** In the unit the field prints without a prefix. */
  readonly value: number
}

const kinds: readonly Typed[] = [
  { stage: 'Equaliser', setting: 'Band b, Frequency', text: '2.5k', value: 2500 },
  { stage: 'Compressor', setting: 'Threshold', text: '-24', value: -24 },
  { stage: 'Compressor', setting: 'Ratio', text: '3', value: 3 },
  { stage: 'Compressor', setting: 'Attack', text: '12', value: 12 },
  { stage: 'Compressor', setting: 'Mix', text: '50', value: 50 },
]

/** A number typed right after a click into its field takes the place of the one that stood there. */
export const typedNumbers: Part = {
  title: 'typed right after a click',
  async look(lab) {
    const page = await lab.freshPage()
    const outcomes: (string | null)[] = []
    for (const typed of kinds) {
      const outcome = await type(page, typed)
      console.log(`  ${lab.name}, ${typed.setting} typed: ${outcome ?? 'ok'}`)
      outcomes.push(outcome)
    }
    return tally(outcomes)
  },
}

async function type(page: AppPage, { stage, setting, text, value }: Typed): Promise<string | null> {
  await page.select(stage)
  const field = { selector: 'input[type="text"]', begins: setting }
  await page.press(field)
  await page.engine.type(text)
  await page.engine.pressEnter()
  const printed = await page.engine.run(
    (target) => {
      const element = window.benchLook?.find(target)
      return element instanceof HTMLInputElement ? element.value : ''
    },
    { ...field },
  )
  const { alerts } = await page.shown()
  if (alerts.length > 0) return `${text} refused`
  return numberIn(printed) === value ? null : `${text} becomes ${printed}`
}

/** The number a field prints: "2.50 kHz" is 2500, "−24.0 dBFS" is -24. */
function numberIn(printed: string): number {
  const [, digits = '', prefix] = /^([-−]?[\d.]+)\s*(k?)/.exec(printed) ?? []
  return Number(digits.replace('−', '-')) * (prefix === 'k' ? 1000 : 1)
}
