import { ANSWER_LIMIT_MS, type Engine, type Point } from './drive/engine'
import { installLook, placeOf, type Shown, type Target } from './page-look'
import { until, within } from './within'

/** For the demo to be made and measured on a machine that is busy, ms. */
const LOAD_LIMIT_MS = 90_000
/** The app, opened in an engine. */
export class AppPage {
  private constructor(
    readonly engine: Engine,
    private readonly answerLimitMs: number,
  ) {}

  /** Opens the app anew and waits for its first figures. */
  static async open(engine: Engine, address: string): Promise<AppPage> {
    await within(LOAD_LIMIT_MS, 'leaving', engine.open('about:blank'))
    await within(LOAD_LIMIT_MS, 'loading', engine.open(address))
    await engine.run(installLook)
    const page = new AppPage(engine, ANSWER_LIMIT_MS)
    if (!(await page.until(LOAD_LIMIT_MS, ({ isSettled }) => isSettled)))
      throw new Error('no figures after the load')
    return page
  }

  /** The same page, given up when it does not answer within `limitMs`. */
  answeringWithin(limitMs: number): AppPage {
    return new AppPage(this.engine, limitMs)
  }

  /** @throws TimeLimitError when the page does not answer in time */
  async shown(): Promise<Shown> {
    const shown = await this.answer(this.engine.run(() => window.benchLook?.shown() ?? null))
    if (!shown) throw new Error('The page is not the one that was opened.')
    return shown
  }

  /** What is shown once `isDone` accepts it; null when that takes longer. */
  until(limitMs: number, isDone: (shown: Shown) => boolean): Promise<Shown | null> {
    return until(limitMs, () => this.shown(), isDone)
  }

  /** Where to press on a target, `along` it from 0, left, to 1. */
  async place(target: Target, along = 0.5): Promise<Point> {
    const point = await this.answer(this.engine.run(placeOf, { ...target, along }))
    if (!point) throw new Error(`not on the page: ${target.begins ?? target.selector}`)
    return point
  }

  async press(target: Target, along?: number): Promise<void> {
    const point = await this.place(target, along)
    await this.answer(this.engine.press(point))
  }

  /** Presses a target by script: for what is not about the pointer. */
  async pressByScript(target: Target): Promise<void> {
    const found = await this.engine.run(
      (wanted) => {
        const element = window.benchLook?.find(wanted)
        element?.click()
        return element !== undefined && element !== null
      },
      { ...target },
    )
    if (!found) throw new Error(`not on the page: ${target.begins ?? target.selector}`)
  }

  /** Has the settings of the first stage of a kind shown. */
  async select(label: string): Promise<void> {
    const id = await this.engine.run((kind) => {
      const stages = [...document.querySelectorAll<HTMLElement>('[data-stage-id]')]
      return stages.find((stage) => stage.textContent?.includes(kind))?.dataset.stageId ?? null
    }, label)
    if (id === null) throw new Error(`no ${label} in the chain`)
    await this.pressByScript({ selector: `[data-stage-id="${id}"] button` })
  }

  private answer<Answer>(answer: Promise<Answer>): Promise<Answer> {
    return within(this.answerLimitMs, 'the page', answer)
  }
}
