import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { deserialize, serialize } from 'node:v8'
import { inject } from 'vitest'
import { type DemoTake, demoTake } from '../../src/demo'

/**
 * The demo as `demoTake` sings it: sung by the first test file of a run that asks for it, read by the others, since
 * singing takes longer than most files do.
 */
export function sungDemo(): DemoTake {
  const file = join(inject('demoFolder'), 'demo')
  if (!existsSync(file)) {
    // Under another name until it is whole: files run side by side.
    const unfinished = `${file}-${process.pid}`
    writeFileSync(unfinished, serialize(demoTake()))
    renameSync(unfinished, file)
  }
  return deserialize(readFileSync(file))
}
