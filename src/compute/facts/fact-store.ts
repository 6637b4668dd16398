import type { SoundAddress } from '../address'
import { ByteCache } from '../byte-cache'
import { buffersIn } from '../port/post-moving'
import { type FactName, type FactValues, factKey } from './fact-values'

/** What a fact without arrays takes, roughly, and what every entry takes beside its arrays. */
const BYTES_BESIDE_ARRAYS = 1000

/** Facts that are known, within a budget in bytes. */
export class FactStore {
  private readonly cache: ByteCache<FactValues[FactName]>

  constructor(budgetBytes: number) {
    this.cache = new ByteCache(budgetBytes)
  }

  has(address: SoundAddress, name: FactName): boolean {
    return this.cache.has(factKey(address, name))
  }

  /** Undefined where it is not known. */
  get<Name extends FactName>(address: SoundAddress, name: Name): FactValues[Name] | undefined {
    // The key names the fact, so that the value is of its kind.
    return this.cache.get(factKey(address, name)) as FactValues[Name] | undefined
  }

  put<Name extends FactName>(address: SoundAddress, name: Name, value: FactValues[Name]): void {
    let bytes = BYTES_BESIDE_ARRAYS
    for (const buffer of buffersIn(value)) bytes += buffer.byteLength
    this.cache.put(factKey(address, name), value, bytes)
  }

  /** These facts stay until others are pinned. */
  pin(facts: readonly (readonly [SoundAddress, FactName])[]): void {
    this.cache.pin(new Set(facts.map(([address, name]) => factKey(address, name))))
  }

  clear(): void {
    this.cache.clear()
  }
}
