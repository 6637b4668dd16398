import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { StageDetail } from '../../../../src/compute/stage-detail'
import { measure, type StageKind, stageDefinitions } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import { addStage } from '../../../../src/session/chain/chain-edits'
import { barsPath } from '../../../../src/view/stage/pictures/bars-path'
import { SelectedStage } from '../../../../src/view/stage/selected-stage'
import { steppedSine } from '../../../setup/signals'
import { showInApp } from '../../chain/in-app'

let app: App
const NOTHING: StageDetail = { level: null, sibilants: null, harmonics: null, levels: null }
const label = () => screen.getByRole('img').getAttribute('aria-label')
const settings = (id: string) => app.chain.getState().chain.stages.find((stage) => stage.id === id)?.settings
const know = (stageId: string, detail: Partial<StageDetail>) =>
  act(() => app.detail.setState({ stageId, detail: { ...NOTHING, ...detail } }))
const add = (kind: StageKind) => {
  act(() => app.chain.getState().edit(addStage(kind)))
  return app.chain.getState().selectedId ?? ''
}
/** The ring that drags a setting. */
const handle = (name: string) => {
  const found = screen.getByText(`${name}: drag`).parentElement
  if (!found) throw new Error('there is no such handle')
  return found
}
const drag = (from: Element, dx: number, dy: number, keys: { altKey?: boolean } = {}) => {
  fireEvent.pointerDown(from, { pointerId: 1, button: 0, clientX: 100, clientY: 100 })
  fireEvent.pointerMove(window, { pointerId: 1, clientX: 100 + dx, clientY: 100 + dy, ...keys })
  fireEvent.pointerUp(window, { pointerId: 1 })
}

beforeEach(() => {
  app = showInApp(<SelectedStage />)
})
afterEach(cleanup)

describe('the static curve', () => {
  beforeEach(() => act(() => app.chain.getState().select('level')))

  it('has threshold and knee dragged on it, each as one change', () => {
    const before = settings('level')
    // 200 px less the margins of 34 for 60 dB.
    drag(handle('Threshold'), -16.6, 0)
    expect(settings('level')).toEqual({ ...before, thresholdDb: -29 })
    drag(handle('Knee'), 8.3, 0)
    expect(settings('level')).toEqual({ ...before, thresholdDb: -29, kneeDb: 12 })
    expect(app.chain.getState().past).toHaveLength(2)
  })

  it('is dragged a tenth as far with Alt', () => {
    drag(handle('Threshold'), -16.6, 0, { altKey: true })
    expect(settings('level')).toMatchObject({ thresholdDb: -23.6 })
  })

  it('tells of the bars beneath it once they are known', () => {
    expect(label()).not.toContain('Bars')
    know('level', { level: { hopFrames: 240, levelDbfs: Float32Array.of(-20, -21, -40) } })
    expect(label()).toContain('Bars show how often each level occurs')
  })
})

describe('bars', () => {
  it('are as high as their shares, the highest as high as may be', () => {
    expect(barsPath([0, 0.5, 0.25], { left: 0, right: 30, bottom: 100, height: 40 })).toBe(
      'M0,100V100H10V60H20V80H30V100Z',
    )
    expect(barsPath([0, 0], { left: 0, right: 30, bottom: 100, height: 40 })).toBeNull()
  })
})

describe('the picture of a de-esser', () => {
  it('has threshold and crossover dragged on it', () => {
    act(() => app.chain.getState().select('sibilance'))
    const before = settings('sibilance')
    drag(handle('Threshold'), 0, 10)
    drag(handle('Crossover'), -20, 0)
    const after = settings('sibilance')
    expect(after).not.toEqual(before)
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual([
      expect.stringMatching(/^threshold −29 to −/),
      expect.stringMatching(/^crossover 4 to 2\.\d+ kHz$/),
    ])
  })
})

describe('the picture of a saturator', () => {
  it('says which harmonics are added, and leaves out what is not heard', () => {
    const id = add('saturator')
    know(id, { harmonics: { frequencyHz: 220, inputDbfs: -17, levelsDb: [-120, -33.6, -120, -67.2] } })
    expect(label()).toContain('it adds harmonics: 3 at −34 dB, 5 at −67 dB.')
    expect(screen.getByText('−34')).toBeDefined()
    know(id, { harmonics: { frequencyHz: 220, inputDbfs: -17, levelsDb: [-120, -110] } })
    expect(label()).toContain('it adds no harmonics')
  })
})

describe('the picture of a gain stage', () => {
  it('says loudness and true peak before and after', () => {
    const id = add('gain')
    expect(label()).toContain('not known')
    const of = (dbfs: number) =>
      measure({ sampleRate: 48_000, channels: [steppedSine(48_000, [[1, dbfs]], 997)] })
    know(id, { levels: { before: of(-20), after: of(-14) } })
    expect(label()).toBe(
      'Integrated: −23.0 LUFS before, −17.0 after, +6.0. True peak: −20.0 dBTP before, −14.0 after, +6.0.',
    )
  })
})

it('every stage with a picture has a sentence for it while nothing is known', () => {
  for (const kind of ['compressor', 'de-esser', 'saturator', 'gain'] as const) {
    add(kind)
    expect(label(), stageDefinitions[kind].label).toMatch(/^[A-Z].*\.$/)
  }
})
