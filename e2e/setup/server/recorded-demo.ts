import type { Plugin } from 'vite'
import { demoTake } from '../../../src/demo'
import { RECORDED_DEMO } from '../recorded-demo'

interface Body {
  readonly type: string
  readonly content: string | Uint8Array
}

/**
 * The demo as the code under test sings it now, by address: a module that posts what the demo's worker posts, and
 * the samples that it fetches for that.
 */
function recording(): ReadonlyMap<string, Body> {
  const { title, vocal, backing } = demoTake()
  const bodies = new Map<string, Body>()
  const sounds = Object.entries({ vocal, backing }).map(([name, { sampleRate, channels }]) => {
    const urls = channels.map(({ buffer, byteOffset, byteLength }, index) => {
      const url = `${RECORDED_DEMO}/${name}/${index}`
      bodies.set(url, {
        type: 'application/octet-stream',
        content: new Uint8Array(buffer, byteOffset, byteLength),
      })
      return url
    })
    return { name, sampleRate, urls }
  })
  const script = `
const samplesAt = async (url) => new Float32Array(await (await fetch(url)).arrayBuffer())
const message = { title: ${JSON.stringify(title)} }
for (const { name, sampleRate, urls } of ${JSON.stringify(sounds)})
  message[name] = { sampleRate, channels: await Promise.all(urls.map(samplesAt)) }
postMessage(message)
`
  return bodies.set(RECORDED_DEMO, { type: 'text/javascript', content: script })
}

/** Serves a recording of the demo beside the built app. */
export const recordedDemo: Plugin = {
  name: 'recorded-demo',
  configurePreviewServer({ middlewares }) {
    const bodies = recording()
    middlewares.use((request, response, next) => {
      const body = bodies.get(request.url ?? '')
      if (!body) return next()
      response.setHeader('Content-Type', body.type)
      response.end(body.content)
    })
  },
}
