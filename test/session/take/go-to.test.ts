import { beforeEach, describe, expect, it } from 'vitest'
import { goToFirstClip, goToFrame } from '../../../src/session/take/go-to'
import { createTakeStore } from '../../../src/session/take/take-store'
import { createViewStore } from '../../../src/session/take/view-store'
import { noise } from '../../setup/signals'

const sound = noise(8000, 10, 1, 1, () => 0.1)
const clipped = [
  { from: 60_000, to: 60_010 },
  { from: 79_000, to: 79_004 },
]
const opened = { name: 'Take 3.wav', sound, header: null, replacedSamples: 0, measures: null }

let take: ReturnType<typeof createTakeStore>
let view: ReturnType<typeof createViewStore>
let sought: number[]
const app = () => ({ take, view, listening: { seek: (frame: number) => void sought.push(frame) } })

beforeEach(() => {
  take = createTakeStore()
  view = createViewStore(take)
  sought = []
  take.setState({ take: { ...opened, marks: { sibilants: [], clipped } } })
})

describe('going to a place of the take', () => {
  it('leaves the view as it is where the place is seen', () => {
    goToFrame(app(), 70_000)
    view.setState({ seen: { from: 69_000, to: 71_000 } })
    goToFrame(app(), 70_000)
    expect([sought, view.getState().seen]).toEqual([[70_000, 70_000], { from: 69_000, to: 71_000 }])
  })

  it('brings it into the middle at the same zoom, as far as the take goes', () => {
    view.setState({ seen: { from: 100.5, to: 2100.5 } })
    goToFrame(app(), 40_000)
    expect(view.getState().seen).toEqual({ from: 39_000, to: 41_000 })
    goToFrame(app(), 79_990)
    expect(view.getState().seen).toEqual({ from: 78_000, to: 80_000 })
    goToFrame(app(), 10)
    expect(view.getState().seen).toEqual({ from: 0, to: 2000 })
  })

  it('finds the first clipped samples, and says where there are none', () => {
    expect(goToFirstClip(app())).toBe(true)
    expect(sought).toEqual([60_000])
    take.setState({ take: opened })
    expect(goToFirstClip(app())).toBe(false)
    take.setState({ take: null })
    expect(goToFirstClip(app())).toBe(false)
    expect(sought).toEqual([60_000])
  })
})
