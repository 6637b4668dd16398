/** What of the listening bar is fetched with the first take. */
export { BarNotes } from './bar-notes'
export { Caption } from './caption'
export { Choices } from './choices'
export { Meters } from './meters/meters'
