import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface Module {
  /** Path from the root, with forward slashes. */
  readonly path: string
  readonly text: string
}

/** Every module in a folder, however deep, sorted by path. */
export function modulesIn(folder: string): Module[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }))
}

/** The modules of the program: all but the build's own. */
export const source = modulesIn('src').filter(({ path }) => !path.startsWith('src/build/'))

/** Whether a path is a folder or lies in it. */
export function startsWithFolder(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`)
}

/** Specifiers a module imports from, types included. */
export function importsOf({ text }: Module): string[] {
  return ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName)
}

/** Path of a relative import without its query; what it has no ending for is completed by what there is. */
export function targetOf(from: string, specifier: string): string {
  const bare = specifier.replace(/\?.*$/, '')
  const path = relative(root, resolve(root, dirname(from), bare)).replaceAll('\\', '/')
  const endings = ['', '.ts', '.tsx', '/index.ts', '/index.tsx']
  return endings.map((ending) => path + ending).find((full) => source.some((m) => m.path === full)) ?? path
}

/** Paths of the modules that a module imports. */
export function neighboursOf(module: Module): string[] {
  return importsOf(module)
    .filter((specifier) => specifier.startsWith('.'))
    .map((specifier) => targetOf(module.path, specifier))
    .filter((path) => !path.endsWith('.css'))
}

/** All that can be reached from `start`, one step after another. */
export function reachedFrom(start: string, next: (from: string) => readonly string[]): Set<string> {
  const reached = new Set<string>()
  const waiting = [...next(start)]
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    if (reached.has(at)) continue
    reached.add(at)
    waiting.push(...next(at))
  }
  return reached
}

/** Paths of the style modules in a folder, however deep. */
export function styleSheetsIn(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith('.module.css'))
}

/** The text of a file, by its path from the root. */
export function textOf(path: string): string {
  return readFileSync(join(root, path), 'utf8')
}
