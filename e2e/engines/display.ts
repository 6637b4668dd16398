import type { Processes } from './processes'
import { within } from './within'

/** Starts a display without a screen on a free number and returns its name, as in `DISPLAY`. */
export async function startDisplay(processes: Processes): Promise<string> {
  const words = ['-displayfd', '3', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp']
  const server = processes.start('Xvfb', words, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] }, 'SIGTERM')
  const number = new Promise<string>((resolve) => {
    server.stdio[3]?.once('data', (said: Buffer) => resolve(said.toString().trim()))
  })
  return `:${await within(20_000, 'Xvfb', number)}`
}
