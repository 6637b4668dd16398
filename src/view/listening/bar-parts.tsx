import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'

/** What of the bar only makes sense with a take, in one file of the build. */
function partOfBar(name: keyof typeof import('./bar-with-take')): LazyPart<ComponentType> {
  return lazyPart('A part of the listening bar', async () => (await import('./bar-with-take'))[name])
}

export const barNotes = partOfBar('BarNotes')
export const backingSettings = partOfBar('BackingSettings')
export const comparedWords = partOfBar('ComparedWords')
export const levelTicks = partOfBar('LevelTicks')
export const meters = partOfBar('Meters')

/** In place of those that could not be loaded: the notes, which come with them, say so. */
export function NoPart() {
  return null
}
