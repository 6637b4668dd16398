/** Something large that is sent once and known by its number from then on. */
export interface Part<Value> {
  readonly number: number
  /** Null where the receiver has it from the message before. */
  readonly value: Value | null
}

/** Numbers what is sent, so that only what was not in the last message goes over whole. */
export class SentParts<Value extends object> {
  private last = new Map<Value, number>()
  private numbers = 0

  pack(values: readonly Value[]): Part<Value>[] {
    const now = new Map<Value, number>()
    const parts = values.map((value) => {
      const known = this.last.get(value) ?? now.get(value)
      const number = known ?? ++this.numbers
      now.set(value, number)
      return { number, value: known === undefined ? value : null }
    })
    this.last = now
    return parts
  }
}

/** The other end of {@link SentParts}: it has to be given every message, in order. */
export class ReceivedParts<Value> {
  private last = new Map<number, Value>()

  /** The same objects as in the message before, where they are the same. */
  unpack(parts: readonly Part<Value>[]): Value[] {
    const now = new Map<number, Value>()
    const values = parts.map(({ number, value }) => {
      const known = value ?? this.last.get(number) ?? now.get(number)
      if (known === undefined) throw new RangeError(`part ${number} was never sent`)
      now.set(number, known)
      return known
    })
    this.last = now
    return values
  }
}
