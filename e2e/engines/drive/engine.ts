export type EngineName = 'chromium' | 'firefox' | 'webkit'

export const engineNames: readonly EngineName[] = ['chromium', 'firefox', 'webkit']

export interface Point {
  readonly x: number
  readonly y: number
}

/** What crosses between this process and the page. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

/** What is needed of an engine. Each driver is this and no more. */
export interface Engine {
  readonly name: EngineName
  readonly version: string
  /** Goes to an address and waits until the document has loaded. */
  open(address: string): Promise<void>
  /** Runs `script` in the page. It can use nothing from outside itself: its source goes there, and JSON both ways. */
  run<Words extends readonly Json[], Answer>(
    script: (...words: Words) => Answer,
    ...words: Words
  ): Promise<Awaited<Answer>>
  /** Moves the mouse to a point. */
  point(point: Point): Promise<void>
  /** Moves the mouse to a point, rests there so that what is pointed at can answer, presses and releases. */
  press(point: Point): Promise<void>
  /** Types text, key by key. */
  type(text: string): Promise<void>
  pressEnter(): Promise<void>
  /** Gives the page a file for its take, as the file chooser would. */
  giveTake(path: string): Promise<void>
  /** Errors and warnings on the console, and uncaught errors, while a page of an address loads. */
  complaintsAtLoad(address: string): Promise<readonly string[]>
  /** Ends the browser, frozen or not. */
  end(): void
}

/** The page's input for the file of a take. */
export const TAKE_INPUT = 'input[data-role="take"]'

/** Between pointing and pressing, and between pressing and releasing, ms: a quick hand. */
export const REST_MS = 250
export const HELD_MS = 40

/** For whatever a driver asks of its browser, ms. */
export const ANSWER_LIMIT_MS = 60_000

/** `script` as source that can be called with its words in the page. */
export function sourceOf(script: (...words: never[]) => unknown, words: readonly Json[]): string {
  // The compiler names functions by a helper of its own, which the page does not have.
  return `((__name) => (${script})(...${JSON.stringify(words)}))((named) => named)`
}
