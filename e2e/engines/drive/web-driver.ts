import { ANSWER_LIMIT_MS } from './engine'

/** What a new session is told about itself. */
interface NewSession {
  readonly sessionId: string
  readonly capabilities: { readonly browserName: string; readonly browserVersion: string }
}

/** The body of each answer: what was asked for, or why it was refused (section 6.6, errors). */
interface Answer<Value> {
  readonly value: Value | { readonly error: string; readonly message: string }
}

/** A browser that speaks W3C WebDriver (https://www.w3.org/TR/webdriver2/), with one session. */
export class WebDriver {
  private constructor(
    private readonly session: string,
    readonly version: string,
  ) {}

  /**
   * Opens a session with the driver that answers at `base`.
   * @param capabilities what the session must have (section 7, capabilities)
   */
  static async start(base: string, capabilities: object): Promise<WebDriver> {
    const body = { capabilities: { alwaysMatch: capabilities } }
    const made = await send<NewSession>(`${base}/session`, body)
    const { browserName, browserVersion } = made.capabilities
    const driver = new WebDriver(`${base}/session/${made.sessionId}`, `${browserName} ${browserVersion}`)
    await driver.post('/timeouts', { script: ANSWER_LIMIT_MS, pageLoad: ANSWER_LIMIT_MS })
    return driver
  }

  /** Asks the session for something; `Value` is what the standard says is answered. */
  post<Value = void>(path: string, body: object): Promise<Value> {
    return send<Value>(this.session + path, body)
  }
}

async function send<Value>(address: string, body: object): Promise<Value> {
  const response = await fetch(address, {
    method: 'POST',
    signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
    body: JSON.stringify(body),
  })
  const { value }: Answer<Value> = await response.json()
  if (typeof value === 'object' && value !== null && 'error' in value)
    throw new Error(`${address}: ${value.error}: ${value.message}`)
  return value
}
