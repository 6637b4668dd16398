import { basename, dirname } from 'node:path'
import { describe, expect, it } from 'vitest'
import {
  importsOf,
  neighboursOf,
  reachedFrom,
  source,
  startsWithFolder,
  styleSheetsIn,
  targetOf,
  textOf,
} from './setup/source-modules'

/**
 * What rooms of the view share, and which of these rooms each may import. Every other room is a part of the page: it
 * may import all of these, and no other part. Modules beside the rooms are the page, which puts the parts together.
 */
const sharedRooms: Record<string, readonly string[]> = {
  hooks: [],
  words: [],
  plot: [],
  controls: ['hooks'],
  context: ['words'],
  dialog: ['context'],
  lazy: ['context'],
  actions: ['context'],
  playback: ['actions', 'context', 'controls'],
}

/** The name of the room of the view that a path lies in, however deep; null beside the rooms and outside the view. */
function viewRoomOf(path: string): string | null {
  const [, room] = /^src\/view\/([^/]+)\//.exec(path) ?? []
  return room ?? null
}

describe('rooms of the view', () => {
  const view = source.filter(({ path }) => path.startsWith('src/view/'))
  const edges = view.flatMap((module) =>
    neighboursOf(module)
      .filter((path) => path.startsWith('src/view/'))
      .map((path) => ({ from: module.path, to: path })),
  )

  it('import only what rooms share, never one another or the page', () => {
    const shared = Object.keys(sharedRooms)
    const wrong = edges.filter(({ from, to }) => {
      const [room, other] = [viewRoomOf(from), viewRoomOf(to)]
      if (room === null || room === other) return false
      return other === null || !(sharedRooms[room] ?? shared).includes(other)
    })
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([])
  })

  it('have no circles between the folders within them', () => {
    const folders = new Map<string, Set<string>>()
    for (const { from, to } of edges) {
      const known = folders.get(dirname(from)) ?? new Set<string>()
      if (dirname(from) !== dirname(to)) known.add(dirname(to))
      folders.set(dirname(from), known)
    }
    const inCircles = [...folders.keys()].filter((folder) =>
      reachedFrom(folder, (from) => [...(folders.get(from) ?? [])]).has(folder),
    )
    expect(inCircles).toEqual([])
  })
})

describe('style sheets', () => {
  it('belong to the component of their name, or to the folder of their name and all that lies in it', () => {
    const wrong = source.flatMap((module) =>
      importsOf(module)
        .filter((specifier) => specifier.endsWith('.module.css'))
        .map((specifier) => targetOf(module.path, specifier))
        .filter((sheet) => {
          const name = sheet.replace(/\.module\.css$/, '')
          if (module.path === `${name}.tsx`) return false
          const folder = dirname(sheet)
          return !(basename(folder) === basename(name) && startsWithFolder(module.path, folder))
        })
        .map((sheet) => `${module.path} imports ${sheet}`),
    )
    expect(wrong).toEqual([])
  })

  it('have a component each', () => {
    const sheets = styleSheetsIn('src/view')
    const imported = new Set(
      source.flatMap((module) => importsOf(module).map((specifier) => targetOf(module.path, specifier))),
    )
    expect(sheets.length).toBeGreaterThan(30)
    expect(sheets.filter((path) => !imported.has(path))).toEqual([])
  })

  it('define every class that is asked of them, and no other', () => {
    const asked = new Map<string, Set<string>>()
    for (const module of source) {
      for (const [, name, specifier] of module.text.matchAll(/import (\w+) from '(\S+\.module\.css)'/g)) {
        if (!name || !specifier) continue
        const sheet = targetOf(module.path, specifier)
        const classes = asked.get(sheet) ?? new Set<string>()
        for (const [, found] of module.text.matchAll(new RegExp(`(?<![\\w/])${name}\\.(\\w+)`, 'g')))
          if (found) classes.add(found)
        asked.set(sheet, classes)
      }
    }
    const classesIn = (sheet: string) =>
      textOf(sheet)
        .replace(/\/\*[\s\S]*?\*\//g, '')
        .matchAll(/\.([a-zA-Z][\w-]*)(?=[^{}]*\{)/g)
    const wrong = [...asked].flatMap(([sheet, classes]) => {
      const defined = new Set([...classesIn(sheet)].map(([, name]) => name))
      const missing = [...classes].filter((name) => !defined.has(name))
      const unused = [...defined].filter((name) => name !== undefined && !classes.has(name))
      return [
        ...missing.map((name) => `${sheet} lacks ${name}`),
        ...unused.map((name) => `${sheet}: nobody asks for ${name}`),
      ]
    })
    expect(wrong).toEqual([])
  })
})
