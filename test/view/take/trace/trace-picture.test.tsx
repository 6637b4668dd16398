import { act, cleanup, screen } from '@testing-library/react'
import { Profiler } from 'react'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { TRACE_HOP_FRAMES } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import type { LiveTrace } from '../../../../src/session/live-trace'
import { wholeTake } from '../../../../src/view/take/time/time-view'
import { TraceLane } from '../../../../src/view/take/trace/trace-lane'
import { showOnPage } from '../../keys/on-page'
import { type DrawnPart, noteDrawing } from '../drawn-on'

const HOPS = 1000
const WIDTH = 500
const HEIGHT = 48
const STAGE = 'level'
const view = wholeTake(HOPS * TRACE_HOP_FRAMES)
const trace = { hopFrames: TRACE_HOP_FRAMES, gainDb: new Float32Array(HOPS).fill(-3) }

let drawn: DrawnPart[]
let renders: number

beforeEach(() => {
  drawn = noteDrawing()
  renders = 0
})
afterEach(cleanup)

async function showLane(on = true) {
  const shown = showOnPage(
    <Profiler id="lane" onRender={() => void renders++}>
      <TraceLane
        id={STAGE}
        kind="compressor"
        on={on}
        number={1}
        heard
        view={view}
        sampleRate={48_000}
        width={WIDTH}
        height={HEIGHT}
        textScale={1}
      />
    </Profiler>,
  )
  // All that the take brings is rendered.
  await act(async () => undefined)
  return shown
}

function come(app: App, live: LiveTrace, stageId = STAGE) {
  drawn.length = 0
  renders = 0
  act(() =>
    app.evidence.setState({ liveTraces: new Map(app.evidence.getState().liveTraces).set(stageId, live) }),
  )
}

const scale = () => screen.getAllByText(/^(0|−\d+)$/).map(({ textContent }) => textContent)

const reach = () => ({
  from: Math.min(...drawn.map(({ x }) => x)),
  to: Math.max(...drawn.map(({ x, width }) => x + width)),
})

describe('the picture of a trace', () => {
  it('draws anew only what came, and renders nothing', async () => {
    const { app } = await showLane()
    come(app, { trace, changed: { from: 0, to: HOPS } })
    expect(reach()).toEqual({ from: 0, to: WIDTH })
    trace.gainDb.fill(-5, 400, 600)
    come(app, { trace, changed: { from: 400, to: 600 } })
    // Two hops a pixel: 200 to 300, and the line's way there and back.
    expect(reach().from).toBeGreaterThan(194)
    expect(reach().from).toBeLessThanOrEqual(198)
    expect(reach().to).toBeGreaterThanOrEqual(302)
    expect(reach().to).toBeLessThan(306)
    expect(renders).toBe(0)
  })

  it('leaves alone what came for another stage', async () => {
    const { app } = await showLane()
    come(app, { trace, changed: { from: 0, to: HOPS } }, 'soften')
    expect(drawn).toEqual([])
    expect(renders).toBe(0)
  })

  it('is drawn whole, on a scale that is said, when what came reaches deeper', async () => {
    const { app } = await showLane()
    come(app, { trace, changed: { from: 0, to: HOPS } })
    expect(scale()).toEqual(['0', '−6'])
    const deep = { ...trace, gainDb: trace.gainDb.slice().fill(-13, 10, 12) }
    come(app, { trace: deep, changed: { from: 0, to: HOPS } })
    deep.gainDb.fill(-19, 10, 12)
    come(app, { trace: deep, changed: { from: 10, to: 12 } })
    expect(reach()).toEqual({ from: 0, to: WIDTH })
    expect(scale()).toEqual(['0', '−12'])
  })

  it('forgets a live trace that is gone', async () => {
    const { app } = await showLane()
    come(app, { trace, changed: { from: 0, to: HOPS } })
    drawn.length = 0
    act(() => app.evidence.setState({ liveTraces: new Map() }))
    expect(reach()).toEqual({ from: 0, to: WIDTH })
    expect(new Set(drawn.at(-1)?.row(0))).toEqual(new Set([255]))
    for (const y of [1, 2, 10, 31]) expect(new Set(drawn.at(-1)?.row(y))).toEqual(new Set([0]))
  })

  it('has a dashed line for a stage that is off, whatever comes', async () => {
    const { app } = await showLane(false)
    come(app, { trace, changed: { from: 0, to: HOPS } })
    const line = drawn.at(-1)?.row(0) ?? []
    expect(line.map((opacity, x) => [x, opacity])).toEqual(line.map((_, x) => [x, x % 8 < 4 ? 255 : 0]))
    expect(line).toHaveLength(WIDTH)
    expect(new Set(drawn.at(-1)?.row(5))).toEqual(new Set([0]))
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('off')
  })

  it('is drawn anew when the page is turned dark', async () => {
    await showLane()
    drawn.length = 0
    await act(async () => {
      document.documentElement.style.color = 'rgb(1, 2, 3)'
      document.documentElement.dataset.theme = 'dark'
      await new Promise((resolve) => setTimeout(resolve))
    })
    expect(reach()).toEqual({ from: 0, to: WIDTH })
    delete document.documentElement.dataset.theme
    document.documentElement.style.color = ''
  })
})
