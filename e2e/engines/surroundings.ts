import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startDisplay } from './display'
import { Processes } from './processes'
import { type Sink, SoundOutput } from './sound-output'

/** What browsers need around them, of this run alone: a folder, a display and a sound output. */
export interface Surroundings {
  readonly processes: Processes
  /** For all that is written; gone at the end. */
  readonly folder: string
  readonly env: NodeJS.ProcessEnv
  readonly output: SoundOutput
}

/** Hands surroundings to `use`. However the run ends, interrupted too, no process and no file of it is left. */
export async function withSurroundings<Result>(
  sink: Sink,
  use: (surroundings: Surroundings) => Promise<Result>,
): Promise<Result> {
  const processes = new Processes()
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-engines-'))
  const leave = () => {
    processes.endAll()
    try {
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
    } catch {
      // A browser that nobody has ended yet still writes there.
    }
  }
  process.on('exit', leave)
  // Each time: a second signal, as a terminal's and npm's both come, must not cut the leaving short.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
    process.on(signal, () => {
      // Once more, behind puppeteer's own leaving: it ends a browser that is just being started.
      process.on('exit', leave)
      process.exit(1)
    })
  const own = { ...process.env, HOME: folder, XDG_RUNTIME_DIR: folder, TMPDIR: folder }
  const output = await SoundOutput.start(processes, folder, own, sink)
  const env = { ...own, DISPLAY: await startDisplay(processes), PULSE_SERVER: output.server }
  return use({ processes, folder, env, output })
}
