import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { StageDetail } from '../../../../src/compute/stage-detail'
import type { SibilantLevel } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import { setSetting } from '../../../../src/session/chain/chain-edits'
import { SelectedStage } from '../../../../src/view/stage/selected-stage'
import { showInApp } from '../../chain/in-app'

let app: App
const NOTHING: StageDetail = { level: null, sibilants: null, harmonics: null, levels: null }
const at = (levelDbfs: number): SibilantLevel => ({
  startSeconds: 1,
  endSeconds: 1.1,
  levelDbfs,
  vowelDbfs: -40,
})
const label = () => screen.getByRole('img').getAttribute('aria-label')
const know = (sibilants: readonly SibilantLevel[]) =>
  act(() => app.detail.setState({ stageId: 'sibilance', detail: { ...NOTHING, sibilants } }))
const setThreshold = (to: number) =>
  act(() => app.chain.getState().edit(setSetting('sibilance', 'thresholdDb', to)))

beforeEach(() => {
  app = showInApp(<SelectedStage />)
  act(() => app.chain.getState().select('sibilance'))
})
afterEach(cleanup)

describe('the picture of a de-esser', () => {
  it('says how many sibilants exceed the threshold, as it moves', () => {
    setThreshold(-29)
    know([at(-35), at(-20.25), at(-25)])
    expect(label()).toContain('2 of 3 exceed the threshold of −29 dBFS, the loudest at −20.3 dBFS')
    setThreshold(-22)
    expect(label()).toContain('1 of 3 exceed the threshold of −22 dBFS')
    setThreshold(-10)
    expect(label()).toContain('0 of 3 exceed')
  })

  it('says that a take has none, and until then that it is not known', () => {
    expect(screen.getByRole('img').parentElement?.getAttribute('aria-busy')).toBe('true')
    know([])
    expect(label()).toContain('none known')
    expect(screen.getByText('no sibilants found')).toBeDefined()
  })

  it('shows nothing of another stage', () => {
    act(() => app.detail.setState({ stageId: 'level', detail: { ...NOTHING, sibilants: [at(-20)] } }))
    expect(label()).toContain('none known')
  })
})
