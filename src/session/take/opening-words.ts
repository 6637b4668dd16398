import { FileError } from '../../files/file-error'
import { isolated, shownName } from '../../files/file-name'
import { PartError } from '../lazy-part'
import { DemoError } from './load-demo'
import type { LoadEnding, Superseding } from './load-queue'

/** What is being loaded when it is no file. */
export const DEMO = 'the demo'

/**
 * What to say of a request that ended so; null where nothing is to be said.
 * @param file null for the demo
 */
export function problemOf(ending: LoadEnding, file: File | null, name: string): string | null {
  switch (ending.kind) {
    case 'in':
    case 'stopped':
      return null
    case 'failed': {
      const { error } = ending
      if (error instanceof FileError || error instanceof DemoError) return error.message
      if (error instanceof PartError) return `${labelOf(name)} was not opened. ${error.message}`
      return `${labelOf(name)} could not be opened: ${reasonOf(error)}. What was open still is; try again or open another file.`
    }
    case 'superseded':
      return supersededWords(ending.by, file, name)
    case 'left-out':
      return notOpened(name, `loading ${labelOf(ending.without)}, which it goes with, did not finish.`)
  }
}

/** Nothing is said of the demo, with which the page begins, nor of a file that is loaded again: its answer comes. */
function supersededWords(
  { words, file: newer }: Superseding,
  file: File | null,
  name: string,
): string | null {
  if (!file || (newer && isSameFile(newer, file))) return null
  const sameName = newer && shownName(newer.name) === name
  const reason = sameName ? 'another file of that name was opened' : words
  return notOpened(name, `${reason} before it had loaded.`)
}

function isSameFile(a: File, b: File): boolean {
  return a.name === b.name && a.size === b.size && a.lastModified === b.lastModified
}

export function notOpened(name: string, why: string): string {
  return `${labelOf(name)} was not opened: ${why}`
}

/** A name in the middle of a sentence. */
export function labelOf(name: string): string {
  return name === DEMO ? name : `“${isolated(name)}”`
}

/** What an error says, as part of a sentence. */
export function reasonOf(error: unknown): string {
  const reason = error instanceof Error ? error.message : String(error)
  return reason.replace(/\.$/, '')
}
