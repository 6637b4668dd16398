/** What of the listening bar is fetched with the first take. */
export { BackingSettings } from './backing-settings'
export { BarNotes } from './bar-notes'
export { ComparedWords } from './compared-words'
export { LevelTicks } from './level-ticks'
export { Meters } from './meters/meters'
