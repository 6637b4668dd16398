import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

// Outside source: WCAG 2.2, "relative luminance" and "contrast ratio"; success criteria 1.4.3 (text 4.5:1) and
// 1.4.11 (lines that carry meaning 3:1).
const css = readFileSync('src/view/tokens.css', 'utf8')
const tokens = new Map(
  Array.from(
    css.matchAll(/--([\w-]+): light-dark\((#\w{6}), (#\w{6})\)/g),
    ([, name = '', light = '', dark = '']) => [name, { light, dark }],
  ),
)

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (high + 0.05) / (low + 0.05)
}

function between(ink: string, paper: string, scheme: 'light' | 'dark'): number {
  const [a, b] = [tokens.get(ink), tokens.get(paper)]
  if (!a || !b) throw new Error(`no such colour: ${ink} or ${paper}`)
  return contrast(a[scheme], b[scheme])
}

it('contrast is measured as WCAG measures it', () => {
  expect(contrast('#000000', '#ffffff')).toBe(21)
  expect(contrast('#ffffff', '#ffffff')).toBe(1)
})

describe.each(['light', 'dark'] as const)('on %s paper', (scheme) => {
  it.each(['ink', 'ink-soft', 'problem'])('the text colour %s stands out 4.5:1', (ink) => {
    expect(between(ink, 'paper', scheme)).toBeGreaterThanOrEqual(4.5)
    expect(between(ink, 'paper-raised', scheme)).toBeGreaterThanOrEqual(4.5)
  })

  it.each(['line', 'bypassed', 'ink', 'stage-1', 'stage-2', 'stage-3', 'stage-4', 'stage-5'])(
    'the line colour %s stands out 3:1, also in the loop',
    (line) => {
      for (const paper of ['paper', 'paper-raised', 'loop'])
        expect(between(line, paper, scheme), paper).toBeGreaterThanOrEqual(3)
    },
  )
})
