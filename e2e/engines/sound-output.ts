import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Processes } from './processes'
import { pause, until } from './within'

/**
 * How the sink takes sound: `steady`, in pieces of 20 ms, as a sound card does; `bursts`, as a null sink does that
 * nobody listens to: up to two seconds at once, then nothing for a while.
 */
export type Sink = 'steady' | 'bursts'

export const sinks: readonly Sink[] = ['steady', 'bursts']

const SINK = 'evenhand'
const LATENCY_MS = 20

/** A PulseAudio server of this run's own, with a null sink for its only output. */
export class SoundOutput {
  private highest = 0

  private constructor(
    /** Where clients find it, as in `PULSE_SERVER`. */
    readonly server: string,
    private readonly sink: Sink,
  ) {}

  static async start(
    processes: Processes,
    folder: string,
    env: NodeJS.ProcessEnv,
    sink: Sink,
  ): Promise<SoundOutput> {
    const socket = join(folder, 'pulse-socket')
    const modules = [
      `module-native-protocol-unix auth-anonymous=1 socket=${socket}`,
      `module-null-sink sink_name=${SINK}`,
      'module-suspend-on-idle',
    ]
    const words = ['-n', '--daemonize=no', '--use-pid-file=no', '--exit-idle-time=-1', '--disable-shm=yes']
    const load = modules.flatMap((module) => ['-L', module])
    processes.start('pulseaudio', [...words, ...load], { env, stdio: 'ignore' }, 'SIGTERM')
    const isUp = await until(20_000, async () => existsSync(socket), Boolean)
    if (!isUp) throw new Error('PulseAudio did not come up.')
    const output = new SoundOutput(`unix:${socket}`, sink)
    if (sink === 'steady') output.listen(processes, env)
    await pause(500)
    return output
  }

  /** The highest sample that reached the sink since the last call, dBFS; null where nobody listens to it. */
  takePeakDbfs(): number | null {
    const { highest } = this
    this.highest = 0
    return this.sink === 'steady' ? 20 * Math.log10(highest) : null
  }

  /** A listener that wants sound soon keeps the sink steady. */
  private listen(processes: Processes, env: NodeJS.ProcessEnv): void {
    const words = ['-d', `${SINK}.monitor`, `--latency-msec=${LATENCY_MS}`, '--format=float32le', '--raw']
    const recorder = processes.start(
      'parec',
      [...words, `--server=${this.server}`],
      { env, stdio: ['ignore', 'pipe', 'ignore'] },
      'SIGTERM',
    )
    let rest = Buffer.alloc(0)
    recorder.stdout?.on('data', (come: Buffer) => {
      const bytes = Buffer.concat([rest, come])
      let at = 0
      for (; at + 4 <= bytes.length; at += 4)
        this.highest = Math.max(this.highest, Math.abs(bytes.readFloatLE(at)))
      rest = bytes.subarray(at)
    })
  }
}
