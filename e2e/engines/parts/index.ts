import { aLaw } from './a-law'
import { m4aAlignment, mp3Alignment } from './alignment'
import { consoleAtLoad } from './console-at-load'
import { loads } from './loads'
import type { Part } from './part'
import { plays } from './plays'
import { equaliserRows, gainRows } from './rows'
import { typedNumbers } from './typed-numbers'

/** All that is looked at, by the names it is asked for with, in this order. */
export const parts: Readonly<Record<string, readonly Part[]>> = {
  console: [consoleAtLoad],
  rows: [equaliserRows, gainRows],
  numbers: [typedNumbers],
  'a-law': [aLaw],
  alignment: [mp3Alignment, m4aAlignment],
  loads: [loads],
  plays: [plays],
}
