import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const html = readFileSync(new URL('../index.html', import.meta.url), 'utf8')
const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(html)?.[1] ?? ''
const directives = new Map(
  policy.split(';').map((directive) => {
    const [name = '', ...sources] = directive.trim().split(/\s+/)
    return [name, sources]
  }),
)

describe("the page's policy", () => {
  it('allows nothing but what it names, and that from the page itself', () => {
    expect(directives.get('default-src')).toEqual(["'none'"])
    const sources = new Set([...directives.values()].flat())
    expect([...sources].sort()).toEqual(["'none'", "'self'", 'blob:', 'data:'])
  })

  // WebKit reports manifest-src as unknown; where it is left out, default-src holds for it (Content Security Policy
  // Level 3, 6.1.6).
  it('names no manifest, for there is none', () => {
    expect(html).not.toMatch(/rel="manifest"/)
    expect([...directives.keys()]).not.toContain('manifest-src')
  })
})
