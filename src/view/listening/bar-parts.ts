import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'

/** What of the bar only makes sense with a take, in one file of the build. */
function partOfBar(name: keyof typeof import('./bar-with-take')): LazyPart<ComponentType> {
  return lazyPart('A part of the listening bar', async () => (await import('./bar-with-take'))[name])
}

const barNotes = partOfBar('BarNotes')
const caption = partOfBar('Caption')
const choices = partOfBar('Choices')
const meters = partOfBar('Meters')

export const barParts = { barNotes, caption, choices, meters } as const
