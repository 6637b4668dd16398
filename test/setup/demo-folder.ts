import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of this run in which the demo is kept once it has been sung. */
    readonly demoFolder: string
  }
}

/** Makes the folder in which test files share the demo, and removes it when the run has ended. */
export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-demo-'))
  project.provide('demoFolder', folder)
  return () => rmSync(folder, { recursive: true })
}
