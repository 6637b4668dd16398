import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../../src/session/app'
import { depthOf, levelColumns, levelRange } from '../../../../src/view/take/level/level-geometry'
import { LevelLane } from '../../../../src/view/take/level/level-lane'
import { showInApp } from '../../chain/in-app'

const level = { hopFrames: 100, levelDbfs: Float32Array.of(-120, -30, -6, -40, -20, -50) }
const db = fc.double({ min: -120, max: 6, noNaN: true })

describe('a level in columns', () => {
  it('keeps the highest of each, so that no peak is lost, and is silent behind the end', () => {
    expect([...levelColumns(level, { from: 0, to: 600 }, 3)]).toEqual([-30, -6, -20])
    expect([...levelColumns(level, { from: 200, to: 1000 }, 4)]).toEqual([-6, -20, -120, -120])
    expect([...levelColumns(level, { from: 200, to: 300 }, 3)]).toEqual([-6, -6, -6])
  })
})

describe('the range of the lane', () => {
  it('holds the highest level and the threshold, with some level below it', () => {
    fc.assert(
      fc.property(db, fc.double({ min: -80, max: 0, noNaN: true }), (highest, thresholdDb) => {
        const range = levelRange(highest, thresholdDb)
        expect(range.highDbfs).toBeGreaterThan(Math.max(highest, thresholdDb))
        expect(range.lowDbfs).toBeLessThan(thresholdDb)
        expect(range.highDbfs - range.lowDbfs).toBeGreaterThanOrEqual(42)
        expect(depthOf(thresholdDb, range)).toBeGreaterThan(0)
        expect(depthOf(thresholdDb, range)).toBeLessThan(1)
      }),
    )
  })
})

describe('the lane of the selected stage', () => {
  let app: App
  /** How often a canvas was drawn on. */
  let drawn: number
  const view = { from: 0, to: 600 }
  const line = () => screen.getByRole('slider', { name: 'Threshold of 3 Compressor, on its level' })
  const threshold = () => {
    const stage = app.chain.getState().chain.stages[2]
    return stage?.kind === 'compressor' ? stage.settings.thresholdDb : null
  }

  beforeEach(() => {
    drawn = 0
    // Canvases have none in a test.
    const context = { beginPath() {}, moveTo() {}, lineTo() {}, fill: () => void drawn++, fillStyle: '' }
    Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
      configurable: true,
      value: () => context,
    })
    app = showInApp(<LevelLane view={view} width={300} height={48} textScale={1} />)
    act(() => {
      app.chain.getState().select('level')
      app.detail.setState({
        stageId: 'level',
        detail: { level, sibilants: null, harmonics: null, levels: null },
      })
    })
  })
  afterEach(cleanup)

  it('says how often the level exceeds the threshold', () => {
    // Two of the five hops that are not silent exceed -23 dBFS.
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain(
      '40 % of the time it is above the threshold of −23 dBFS',
    )
  })

  it('has its threshold dragged as one change, without drawing the level anew', () => {
    const before = drawn
    expect(before).toBeGreaterThan(0)
    fireEvent.pointerDown(line(), { pointerId: 1, button: 0, clientY: 100 })
    // 48 px for 42 dB, from 0 to -42 dBFS.
    fireEvent.pointerMove(window, { pointerId: 1, clientY: 104 })
    fireEvent.pointerMove(window, { pointerId: 1, clientY: 108 })
    fireEvent.pointerUp(window, { pointerId: 1 })
    expect(threshold()).toBe(-30)
    expect(app.chain.getState().past).toHaveLength(1)
    expect(drawn).toBe(before)
  })

  it('has its threshold moved by the keys of a slider', () => {
    fireEvent.keyDown(line(), { key: 'ArrowUp' })
    fireEvent.keyDown(line(), { key: 'ArrowDown', shiftKey: true })
    fireEvent.keyUp(line(), { key: 'ArrowDown' })
    expect(threshold()).toBe(-27.5)
    expect(line().getAttribute('aria-valuetext')).toBe('minus 27.5 decibels full scale')
    expect(app.chain.getState().past).toHaveLength(1)
  })

  it('is none of a stage without detector', () => {
    act(() => app.chain.getState().select('clean-up'))
    expect(screen.queryByRole('slider')).toBeNull()
  })
})
