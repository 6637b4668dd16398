import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'

interface Locked {
  readonly dev?: boolean
  readonly optional?: boolean
  readonly version?: string
}

/**
 * Packages that dependencies bring with them and of which nothing is shipped: types, and what d3-scale needs for colours,
 * dates, names and the printing of ticks (`build/lean-d3.ts`).
 */
const NOT_SHIPPED =
  /^(@types\/.*|csstype|typescript|d3-color|d3-format|d3-interpolate|d3-time|d3-time-format|internmap)$/

const lock: { readonly packages: Readonly<Record<string, Locked>> } = JSON.parse(
  readFileSync(new URL('../package-lock.json', import.meta.url), 'utf8'),
)

test('the licences of all that is shipped lie beside the page', async ({ request }) => {
  const response = await request.get('/third-party-licences.txt')
  expect(response.headers()['content-type']).toMatch(/^text\/plain/)
  const sections = (await response.text()).split(/\n-{80}\n/).slice(1)
  const shipped = Object.entries(lock.packages)
    .filter(([path, { dev }]) => path !== '' && !dev)
    .map(([path, { version }]) => ({ name: path.replace(/^.*node_modules\//, ''), version }))
    .filter(({ name }) => !NOT_SHIPPED.test(name))
  expect(shipped.map(({ name }) => name)).toContain('react-dom')
  for (const { name, version } of shipped) {
    const section = sections.find((text) => text.startsWith(`\n${name} ${version} (`))
    expect(section, name).toMatch(/copyright/i)
    expect(section, name).toMatch(/Permission|Mozilla Public License/)
  }
})
