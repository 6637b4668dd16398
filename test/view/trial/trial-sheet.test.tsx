import { act, cleanup, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { comparisonOf } from '../../../src/core'
import * as save from '../../../src/files/save'
import { OutputLevels } from '../../../src/view/listening/meters/output-levels'
import { TrialSheet } from '../../../src/view/trial/trial-sheet'
import { matchingWords } from '../../../src/view/trial/trial-words'
import { evidenceOf } from '../../session/trials/trial-app'
import { showOnPage } from '../keys/on-page'

let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()
const sides = { bypassed: 'without', processed: 'with' }

/** Opens the sheet on a measured bench where chance hides `with` (true) or `without` behind X, or A, each time. */
function open(hidden: boolean) {
  vi.spyOn(crypto, 'getRandomValues').mockImplementation((array) => {
    if (array instanceof Uint8Array) array.fill(hidden ? 1 : 0)
    return array
  })
  page = showOnPage(<TrialSheet />)
  const { app } = page
  vi.spyOn(app.listening, 'play').mockImplementation(async () => app.listen.setState({ playing: true }))
  act(() => {
    const evidence = evidenceOf(comparisonOf(app.chain.getState().chain, { kind: 'chain' }))
    app.evidence.setState({ evidence, working: null })
    page.screen.setState({ sheet: 'trial' })
  })
}

/** All that the page says: its text, its attributes, and what is chosen in it, which is no attribute. */
function wholePage(): string {
  const inputs = [...document.querySelectorAll('input')].map(({ checked, value }) => `${checked} ${value}`)
  // Identifiers only count how often something was drawn.
  const html = document.documentElement.outerHTML.replaceAll(/_r_\w+_/g, 'id')
  return [html, document.title, ...inputs].join('\n')
}

/** Lets what is listened to sound for a second. */
const sounds = () =>
  act(() => {
    for (let step = 0; step < 10; step++)
      page.app.listen.setState(({ positionFrame }) => ({ positionFrame: positionFrame + 800 }))
  })

const begin = () => user.click(screen.getByRole('button', { name: 'Begin' }))

beforeEach(() => open(true))
afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

describe('the set-up', () => {
  it('says what is compared, how it is matched, and what a run can show before it begins', () => {
    expect(screen.getByText('the whole chain')).toBeDefined()
    expect(screen.getByRole('status').textContent).toMatch(
      /^Matched: “without” plays \d+(\.\d)? dB lower, measured over the take/,
    )
    expect(screen.getByText(/12 of 16 or better happens by guessing 4 % of the time/)).toBeDefined()
  })

  it('refuses where the sides cannot be matched, and says why', () => {
    const { evidence } = page.app.evidence.getState()
    if (!evidence) throw new Error('the bench has evidence')
    const matching = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' } as const
    act(() => page.app.evidence.setState({ evidence: { ...evidence, matching } }))
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Begin' }).disabled).toBe(true)
    expect(screen.getByRole('status').textContent).toMatch(/cannot be matched.*too little sound/)
  })
})

describe('a run', () => {
  it('goes by keyboard from beginning to result', async () => {
    await begin()
    for (let round = 1; round <= 16; round++) {
      expect(document.activeElement?.textContent).toBe(`Round ${round} of 16`)
      await user.keyboard('3')
      expect(page.app.trial.getState().running?.choice).toBe('x')
      sounds()
      // Enter without an answer does nothing.
      await user.keyboard('{Enter}')
      await user.keyboard(round <= 12 ? '{ArrowRight}{Enter}' : '{ArrowLeft}{Enter}')
    }
    expect(document.activeElement?.textContent).toBe('12 of 16 right')
    expect(screen.getByText(/better 4 % of the time \(exact one-sided test\)/)).toBeDefined()
    expect(screen.getAllByRole('cell', { name: 'wrong', hidden: true })).toHaveLength(4)
    expect(screen.getByText('1 started: 1 finished, 0 abandoned.')).toBeDefined()
  })

  it('is the same page for X and for X the other way round, each time something is heard', async () => {
    const pagesWhenX = async (hidden: boolean) => {
      cleanup()
      open(hidden)
      await begin()
      const pages: string[] = []
      for (const keys of [
        '3',
        '1',
        '3',
        '2',
        'x',
        '{ArrowLeft}',
        '{Enter}',
        '3',
        '{ArrowRight}',
        '{Enter}',
        '3',
      ]) {
        await user.keyboard(keys)
        if (keys === '3') sounds()
        pages.push(wholePage())
      }
      return pages
    }
    const processed = await pagesWhenX(true)
    expect(processed[2]).not.toBe(processed[1])
    expect(await pagesWhenX(false)).toEqual(processed)
  })

  it('takes no answer before X was heard, by key or button, and says why', async () => {
    await begin()
    const answer = () => screen.getByRole<HTMLButtonElement>('button', { name: 'Answer, next round' })
    const group = () => screen.getByRole<HTMLFieldSetElement>('group', { name: 'X is' })
    expect(group().disabled).toBe(true)
    expect(screen.getByRole('status').textContent).toMatch(/^Listen to X for a moment before you answer/)
    expect(group().getAttribute('aria-describedby')).toBe(screen.getByRole('status').id)
    await user.keyboard('{ArrowRight}{Enter}3{ArrowRight}{Enter}')
    expect(within(group()).queryByRole('radio', { checked: true })).toBeNull()
    expect(answer().disabled).toBe(true)
    expect(page.app.trial.getState().running?.round).toBe(1)
    sounds()
    expect(screen.getByRole('status').textContent).toBe('')
    await user.keyboard('{ArrowRight}')
    await user.click(answer())
    expect(page.app.trial.getState().running?.round).toBe(2)
    expect(group().disabled).toBe(true)
  })

  it('is not abandoned without asking, and then counts as abandoned', async () => {
    await begin()
    await user.keyboard('{Escape}')
    expect(page.screen.getState().sheet).toBe('trial')
    expect(screen.getByText(/Quit this trial\?/)).toBeDefined()
    await user.keyboard('{Escape}')
    expect(screen.getByRole('heading', { name: 'Round 1 of 16' })).toBeDefined()
    await user.keyboard('{Escape}')
    await user.click(screen.getByRole('button', { name: 'Continue' }))
    expect(screen.getByRole('heading', { name: 'Round 1 of 16' })).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'Close' }))
    await user.click(screen.getByRole('button', { name: 'Quit trial' }))
    expect(screen.getByRole('heading', { name: 'Abandoned after 0 of 16 rounds' })).toBeDefined()
    expect(screen.getByRole('cell', { name: 'abandoned' })).toBeDefined()
    await user.keyboard('{Escape}')
  })

  it('is abandoned when the sheet goes away by itself', async () => {
    await begin()
    act(() => page.screen.setState({ sheet: null }))
    expect(page.app.trial.getState()).toMatchObject({ running: null, shown: null })
    expect(page.app.trial.getState().history).toMatchObject([{ finished: false }])
  })

  it('is abandoned when the page that shows it goes', async () => {
    await begin()
    cleanup()
    expect(page.app.trial.getState()).toMatchObject({ running: null, history: [{ finished: false }] })
  })

  it('shows no level of what is heard', async () => {
    cleanup()
    const { app } = showOnPage(<OutputLevels />)
    expect(screen.getByText('silent')).toBeDefined()
    const running = {
      number: 1,
      kind: 'name-x',
      sides,
      rounds: 8,
      round: 1,
      choice: 'x',
      heard: false,
    } as const
    act(() => app.trial.setState({ running }))
    expect(screen.getByText('levels not shown')).toBeDefined()
  })

  it('leaves the arrows to the volume while it has the focus', async () => {
    await begin()
    screen.getByRole('slider', { name: 'Monitor volume' }).focus()
    await user.keyboard('{ArrowRight}')
    expect(page.app.listen.getState().monitorDb).toBe(-17)
    const answers = within(screen.getByRole('group', { name: 'X is' }))
    expect(answers.queryByRole('radio', { checked: true })).toBeNull()
  })
})

describe('the history', () => {
  it('is saved as a table', async () => {
    const saved = vi.spyOn(save, 'saveBlob').mockImplementation(() => undefined)
    await begin()
    act(() => page.app.trials.abandon())
    await user.click(screen.getByRole('button', { name: 'Save as CSV' }))
    expect(saved.mock.calls[0]?.[1]).toBe('Blind trials - evenhand.csv')
    expect(await saved.mock.calls[0]?.[0].text()).toMatch(/\r\n1,.*abandoned/)
  })
})

describe('matchingWords', () => {
  it('says which side plays lower and by how much, or that neither is', () => {
    expect(matchingWords({ bypassedDb: -4.14, processedDb: 0, measuredOver: 'take' }, sides)).toMatch(
      /^Matched: “without” plays 4\.1 dB lower, measured over the take\./,
    )
    expect(matchingWords({ bypassedDb: 0, processedDb: -2, measuredOver: 'loop' }, sides)).toContain(
      '“with” plays 2 dB lower, measured over the loop',
    )
    expect(matchingWords({ bypassedDb: -0.04, processedDb: 0, measuredOver: 'take' }, sides)).toMatch(
      /^Both are already equally loud/,
    )
  })
})
