import { fileURLToPath } from 'node:url'
import { build, preview } from 'vite'
import { freePort } from './drive/free-port'

/** Builds the app, serves it on a free port, and hands its address to `use`. */
export async function withServedBuild<Result>(use: (address: string) => Promise<Result>): Promise<Result> {
  const root = fileURLToPath(new URL('../..', import.meta.url))
  await build({ root, logLevel: 'warn' })
  const port = await freePort()
  const server = await preview({ root, logLevel: 'warn', preview: { port, strictPort: true } })
  try {
    return await use(`http://127.0.0.1:${port}/`)
  } finally {
    await server.close()
  }
}
