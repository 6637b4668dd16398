import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process'

type Ending = 'SIGTERM' | 'SIGKILL'

/** Processes of a run, each the head of a group of its own, so that whatever it starts ends with it. */
export class Processes {
  private readonly endings = new Map<number, Ending>()

  /** @throws Error when the program cannot be started */
  start(program: string, words: readonly string[], options: SpawnOptions, ending: Ending): ChildProcess {
    const child = spawn(program, words, { ...options, detached: true })
    if (child.pid === undefined) throw new Error(`${program} could not be started`)
    this.adopt(child, ending)
    return child
  }

  /** Takes charge of a process that heads a group already. */
  adopt(child: ChildProcess, ending: Ending): void {
    if (child.pid !== undefined) this.endings.set(child.pid, ending)
  }

  end({ pid }: ChildProcess): void {
    if (pid !== undefined) this.endGroup(pid)
  }

  /** Ends all that was started and has not been ended. Takes no time, so that it can be done on the way out. */
  endAll(): void {
    for (const pid of [...this.endings.keys()].reverse()) this.endGroup(pid)
  }

  private endGroup(pid: number): void {
    const ending = this.endings.get(pid)
    if (ending === undefined) return
    this.endings.delete(pid)
    try {
      process.kill(-pid, ending)
    } catch {
      // Nothing of the group is left.
    }
  }
}
