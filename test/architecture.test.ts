import { describe, expect, it } from 'vitest'
import { stageDefinitions, stageKinds } from '../src/core'
import {
  importsOf,
  modulesIn,
  neighboursOf,
  reachedFrom,
  source,
  startsWithFolder,
  targetOf,
} from './setup/source-modules'

/**
 * Who may import whom. A module belongs to the longest name here that its path begins with; its own group is
 * always open to it. `packages` are the only npm packages it may use.
 */
const layers: Record<string, { readonly modules: readonly string[]; readonly packages: readonly string[] }> =
  {
    'src/core/sound': { modules: [], packages: [] },
    'src/core/dsp': { modules: ['src/core/sound'], packages: ['fft.js'] },
    'src/core/stages': { modules: ['src/core/dsp', 'src/core/sound'], packages: [] },
    'src/core/chain': {
      modules: ['src/core/stages', 'src/core/dsp', 'src/core/sound'],
      packages: ['valibot'],
    },
    'src/core/measure': { modules: ['src/core/dsp', 'src/core/sound'], packages: [] },
    'src/core/study': {
      modules: ['src/core/chain', 'src/core/measure', 'src/core/stages', 'src/core/dsp', 'src/core/sound'],
      packages: [],
    },
    'src/core/index.ts': { modules: ['src/core'], packages: [] },
    'src/core/primitives.ts': { modules: ['src/core'], packages: [] },
    'src/demo': { modules: ['src/core'], packages: [] },
    'src/files': { modules: ['src/core', 'src/compute'], packages: ['mediabunny'] },
    'src/compute': { modules: ['src/core'], packages: [] },
    'src/audio': { modules: ['src/core', 'src/compute'], packages: [] },
    'src/audio/engine': { modules: ['src/core'], packages: [] },
    // What runs on the audio thread needs nothing of the page.
    'src/audio/thread': { modules: ['src/core', 'src/audio/engine'], packages: [] },
    'src/session': {
      modules: ['src/core', 'src/compute', 'src/files', 'src/audio', 'src/demo'],
      packages: ['valibot', 'zustand'],
    },
    'src/view': {
      modules: ['src/core', 'src/session'],
      packages: ['react', 'react-dom', 'zustand', 'd3-scale', 'd3-shape'],
    },
    // Controls are made of the tables of parameters, and know no app.
    'src/view/controls': { modules: ['src/core', 'src/view/hooks'], packages: ['react'] },
  }

/** Where the browser begins: the page. Workers and the audio thread are imported as addresses from there. */
const ENTRY = 'src/view/main.tsx'

function layerOf(path: string): string {
  const names = Object.keys(layers).filter((name) => startsWithFolder(path, name))
  const longest = names.sort((a, b) => b.length - a.length)[0]
  if (!longest) throw new Error(`${path} belongs to no layer`)
  return longest
}

/** What lies in a folder of a part of the program (`src/view/take`) is one room; other modules are in none. */
function roomOf(path: string): string | null {
  const folders = path.split('/').slice(0, -1)
  return folders.length >= 3 ? folders.slice(0, 3).join('/') : null
}

/** A module's text without comments. */
function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
}

describe('imports', () => {
  it('lead from the page to every module there is', () => {
    const neighbours = new Map(source.map((module) => [module.path, neighboursOf(module)]))
    const reached = reachedFrom(ENTRY, (path) => neighbours.get(path) ?? []).add(ENTRY)
    const modules = source.map(({ path }) => path).filter((path) => !path.endsWith('.d.ts'))
    expect([...reached].sort()).toEqual(modules)
  })

  it('lead from no room by way of others back to it', () => {
    const rooms = new Map<string, Set<string>>()
    for (const module of source) {
      const room = roomOf(module.path)
      if (room === null) continue
      const others = neighboursOf(module).map(roomOf)
      const known = rooms.get(room) ?? new Set<string>()
      for (const other of others) if (other !== null && other !== room) known.add(other)
      rooms.set(room, known)
    }
    const inCircles = [...rooms.keys()].filter((room) =>
      reachedFrom(room, (from) => [...(rooms.get(from) ?? [])]).has(room),
    )
    expect(inCircles).toEqual([])
  })

  it('take the core by its two faces: the page by index, what makes or moves sound by primitives too', () => {
    const page = ['src/session', 'src/view']
    const deep = source
      .filter(({ path }) => !startsWithFolder(path, 'src/core'))
      .flatMap((module) => neighboursOf(module).map((path) => ({ module, path })))
      .filter(({ path }) => startsWithFolder(path, 'src/core') && path !== 'src/core/index.ts')
      .filter(
        ({ module, path }) =>
          path !== 'src/core/primitives.ts' || page.some((folder) => startsWithFolder(module.path, folder)),
      )
    expect(deep.map(({ module, path }) => `${module.path} imports ${path}`)).toEqual([])
  })

  it('run one way, as the table of layers says', () => {
    const wrong = source.flatMap((module) => {
      const layer = layerOf(module.path)
      const allowed = layers[layer]
      return importsOf(module)
        .filter((specifier) => {
          if (!specifier.startsWith('.')) {
            return !allowed?.packages.some((name) => startsWithFolder(specifier, name))
          }
          const target = targetOf(module.path, specifier)
          // Style sheets are no modules; they lie beside the component that uses them.
          if (target.endsWith('.css')) return !startsWithFolder(layer, 'src/view')
          const own = startsWithFolder(target, layer)
          return !own && !allowed?.modules.some((name) => startsWithFolder(target, name))
        })
        .map((specifier) => `${module.path} imports ${specifier}`)
    })
    expect(wrong).toEqual([])
  })

  it('never reach up to the view', () => {
    const upward = source
      .filter(({ path }) => !path.startsWith('src/view/'))
      .flatMap((module) => importsOf(module).map((specifier) => targetOf(module.path, specifier)))
      .filter((target) => startsWithFolder(target, 'src/view'))
    expect(upward).toEqual([])
  })
})

describe('modules', () => {
  it('stay short enough to be read at a sitting: no more than 300 lines', () => {
    const everything = [...source, ...modulesIn('test'), ...modulesIn('e2e')]
    const long = everything.filter(({ text }) => text.split('\n').length > 301).map(({ path }) => path)
    expect(long).toEqual([])
  })

  it('switch no check off', () => {
    const switchedOff = /@ts-(ignore|nocheck|expect-error)|\bas never\b/
    const everything = [...source, ...modulesIn('e2e'), ...modulesIn('test')]
    const wrong = everything.filter(
      ({ path, text }) => path !== 'test/architecture.test.ts' && switchedOff.test(text),
    )
    expect(wrong.map(({ path }) => path)).toEqual([])
  })

  it('of the core know no clock, no chance and no console', () => {
    const forbidden = /\bMath\.random\b|\bnew Date\b|\bDate\.now\b|\bperformance\.|\bconsole\./
    const core = source.filter(({ path }) => path.startsWith('src/core/'))
    expect(core.filter(({ text }) => forbidden.test(text)).map(({ path }) => path)).toEqual([])
  })
})

describe('traps of the web platform', () => {
  it('are left alone: the output is never asked for its latency, which can freeze Firefox for good', () => {
    const asks = /outputLatency|getOutputTimestamp/
    const wrong = source.filter(({ text }) => asks.test(withoutComments(text)))
    expect(wrong.map(({ path }) => path)).toEqual([])
  })

  it('are left alone: nothing that runs off the page starts workers, which can stall in Firefox', () => {
    const entries = source.filter(({ path }) => /\.(worker|worklet)\.ts$/.test(path))
    expect(entries.length).toBeGreaterThanOrEqual(4)
    const offPage = new Set(entries)
    for (const module of offPage) {
      // What is imported by its address is another thread's.
      const specifiers = importsOf(module).filter((specifier) => !specifier.includes('?worker'))
      const targets = specifiers.map((specifier) => targetOf(module.path, specifier))
      for (const reached of source.filter(({ path }) => targets.includes(path))) offPage.add(reached)
    }
    expect(offPage.size).toBeGreaterThan(50)
    const wrong = [...offPage].filter(({ text }) => /\bnew (Shared)?Worker\b/.test(withoutComments(text)))
    expect(wrong.map(({ path }) => path)).toEqual([])
  })
})

describe('the one table of kinds', () => {
  it('is the only place that knows them: no other module names one, but for the chain of the demo', () => {
    const named = new RegExp(`'(${stageKinds.join('|')})'|stageDefinitions\\.`)
    const elsewhere = source.filter(
      ({ path }) => !startsWithFolder(path, 'src/core/stages') && path !== 'src/demo/starting-chain.ts',
    )
    const lines = elsewhere.flatMap(({ path, text }) =>
      withoutComments(text)
        .split('\n')
        .filter((line) => named.test(line))
        .map((line) => `${path}: ${line.trim()}`),
    )
    expect(lines).toEqual([])
  })

  it('has definitions apart from processors: what they import keeps no state, so that the page runs no stage', () => {
    const table = 'src/core/stages/index.ts'
    const neighbours = new Map(source.map((module) => [module.path, neighboursOf(module)]))
    const reached = reachedFrom(table, (path) => neighbours.get(path) ?? []).add(table)
    expect(reached.size).toBeGreaterThan(15)
    const stateful = source.filter(
      ({ path, text }) => reached.has(path) && /^(export )?(abstract )?class /m.test(text),
    )
    expect(stateful.map(({ path }) => path)).toEqual([])
  })

  it.each(stageKinds)(
    '%s has a label, a purpose, a help sentence for each parameter and a description',
    (kind) => {
      const definition = stageDefinitions[kind]
      for (const sentence of [definition.purpose, ...helpOf(definition.parameters)]) {
        expect(sentence).toMatch(/^[A-Z].*\.$/s)
      }
      expect(definition.label).toMatch(/^[A-Z]/)
    },
  )
})

/** The help sentences of a parameter table, those of list items included. */
function helpOf(parameters: object): string[] {
  return Object.values(parameters).flatMap((row: { help: string; item?: object }) => [
    row.help,
    ...(row.item ? helpOf(row.item) : []),
  ])
}
