interface Entry<Value> {
  readonly value: Value
  readonly bytes: number
}

/** Values by key, within a budget in bytes: what was not asked for longest goes first, what is pinned stays. */
export class ByteCache<Value> {
  /** The least recently used first. */
  private readonly entries = new Map<string, Entry<Value>>()
  private pinned: ReadonlySet<string> = new Set()
  private total = 0

  constructor(private readonly budgetBytes: number) {}

  get bytes(): number {
    return this.total
  }

  has(key: string): boolean {
    return this.entries.has(key)
  }

  get(key: string): Value | undefined {
    const entry = this.entries.get(key)
    if (!entry) return undefined
    this.entries.delete(key)
    this.entries.set(key, entry)
    return entry.value
  }

  /** Takes in a value; one that is larger than the whole budget only where it is pinned. */
  put(key: string, value: Value, bytes: number): void {
    this.delete(key)
    if (bytes > this.budgetBytes && !this.pinned.has(key)) return
    this.entries.set(key, { value, bytes })
    this.total += bytes
    this.makeRoom()
  }

  /** From now on these stay, and no others for certain. */
  pin(keys: ReadonlySet<string>): void {
    this.pinned = keys
    this.makeRoom()
  }

  delete(key: string): void {
    this.total -= this.entries.get(key)?.bytes ?? 0
    this.entries.delete(key)
  }

  clear(): void {
    this.entries.clear()
    this.total = 0
  }

  private makeRoom(): void {
    for (const key of this.entries.keys()) {
      if (this.total <= this.budgetBytes) return
      if (!this.pinned.has(key)) this.delete(key)
    }
  }
}
