import { fileURLToPath } from 'node:url'
import { preview } from 'vite'
import { PORT } from '../port'
import { recordedDemo } from './recorded-demo'

// Serves the built app to the tests, and beside it the demo as it is sung now.
await preview({
  configFile: false,
  root: fileURLToPath(new URL('../../..', import.meta.url)),
  logLevel: 'error',
  plugins: [recordedDemo],
  preview: { host: '127.0.0.1', port: PORT, strictPort: true },
})
