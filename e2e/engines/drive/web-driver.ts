import { ANSWER_LIMIT_MS } from './engine'

/** A browser that speaks W3C WebDriver (https://www.w3.org/TR/webdriver2/), with one session. */
export class WebDriver {
  private constructor(
    private readonly session: string,
    readonly version: string,
  ) {}

  /**
   * Opens a session once the driver at `base` answers.
   * @param capabilities what the session must have (section 7.2)
   */
  static async start(base: string, capabilities: object): Promise<WebDriver> {
    const made = await send(`${base}/session`, 'POST', { capabilities: { alwaysMatch: capabilities } })
    const { browserName, browserVersion } = made.capabilities
    const driver = new WebDriver(`${base}/session/${made.sessionId}`, `${browserName} ${browserVersion}`)
    await driver.post('/timeouts', { script: ANSWER_LIMIT_MS, pageLoad: ANSWER_LIMIT_MS })
    return driver
  }

  get(path: string) {
    return send(this.session + path, 'GET')
  }

  post(path: string, body: object) {
    return send(this.session + path, 'POST', body)
  }
}

/** The `value` of an answer; what it is stands in the standard, section by section. */
async function send(address: string, method: 'GET' | 'POST', body?: object) {
  const response = await fetch(address, {
    method,
    signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
    ...(body && { body: JSON.stringify(body) }),
  })
  const { value } = await response.json()
  if (value?.error) throw new Error(`${address}: ${value.error}: ${value.message}`)
  return value
}
