import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../compute/compute'
import { deliveredName, saveBlob } from '../files/save'
import type { WavFormat } from '../files/wav/wav-writer'
import type { ChainState } from './chain/chain-store'
import { storedAs } from './chain/stored-as'
import type { DeliveryState } from './delivery-store'
import { wavWriting } from './parts'
import { isolated, type TakeState } from './take/take-store'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly delivery: StoreApi<DeliveryState>
}

/** What each format is called, in the names of files too: two formats of one take are two files. */
export const formatNames: Readonly<Record<WavFormat, string>> = {
  pcm24: '24-bit',
  pcm16: '16-bit',
  float32: '32-bit float',
}

/** Any number does. It is always the same, so that a take and a chain always make the same file. */
const DITHER_SEED = 1

/** Makes the delivered file: the whole chain, at the take's own rate, as long as the take and aligned with it. */
export class Delivery {
  private stopping: AbortController | null = null

  constructor(
    private readonly stores: Stores,
    private readonly compute: Pick<Compute, 'render'>,
  ) {}

  setFormat(format: WavFormat): void {
    this.stores.delivery.setState({ format, delivered: null })
  }

  /** Renders and saves. Monitor volume and matching have no part in it. */
  async deliver(): Promise<void> {
    const { take } = this.stores.take.getState()
    const { delivery } = this.stores
    const { format, working } = delivery.getState()
    if (!take || working !== null) return
    this.stopping = new AbortController()
    const { signal } = this.stopping
    delivery.setState({ working: 0, delivered: null, problem: null })
    try {
      const { chain, snapshots, setSafe } = this.stores.chain.getState()
      const onProgress = (working: number) => delivery.setState({ working })
      const sound = await this.compute.render(chain, onProgress, signal)
      if (sound && !signal.aborted) {
        const fileName = deliveredName(
          take.name,
          'wav',
          formatNames[format],
          storedAs(chain, snapshots)?.shown ?? null,
        )
        const { encodeWav } = await wavWriting.load()
        // Only 16 bits are coarse enough for rounding to be heard.
        const options = format === 'pcm16' ? { ditherSeed: DITHER_SEED } : {}
        const { bytes, clippedSamples, isDithered } = encodeWav(sound, format, options)
        saveBlob(new Blob([bytes], { type: 'audio/wav' }), fileName)
        delivery.setState({ delivered: { fileName, format, clippedSamples, isDithered } })
        setSafe(chain)
      }
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      delivery.setState({
        problem: `“${isolated(take.name)}” could not be delivered: ${reason} The take and the chain are still here; try again.`,
      })
    } finally {
      delivery.setState({ working: null })
    }
  }

  /** Gives up the delivery under way. */
  cancel(): void {
    this.stopping?.abort()
  }
}
