/** Who answers are posted to, as a worker sees it. */
export interface Poster<Message> {
  postMessage(message: Message, transfer: Transferable[]): void
}

/** Posts `message`; its arrays move over and are gone here. */
export function postMoving<Message>(scope: Poster<Message>, message: Message): void {
  scope.postMessage(message, [...buffersIn(message)])
}

/**
 * Posts a copy of `message` whose arrays move over: the page, which must not stand still, then has nothing to copy.
 * The worker keeps its own.
 */
export function postOwned<Message>(scope: Poster<Message>, message: Message): void {
  postMoving(scope, structuredClone(message))
}

/** The memory of every typed array in a value of plain objects and arrays. */
export function buffersIn(value: unknown, found = new Set<ArrayBuffer>()): Set<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer)
  } else if (typeof value === 'object' && value !== null) {
    for (const inside of Object.values(value)) buffersIn(inside, found)
  }
  return found
}
