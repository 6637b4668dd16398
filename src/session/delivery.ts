import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../compute/compute'
import { deliveredName, saveBlob } from '../files/save'
import type { WavFormat } from '../files/wav/wav-writer'
import { lowerOutput } from './chain/chain-edits'
import type { ChainState } from './chain/chain-store'
import { storedAs } from './chain/stored-as'
import type { DeliveryState, FileLevels } from './delivery-store'
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

/** Bits of the integers of a format; null for float, which holds any peak. */
const integerBits: Readonly<Record<WavFormat, number | null>> = { pcm24: 24, pcm16: 16, float32: null }

/** Half a step of 16 bits below full scale is -0.0001 dBFS: below this no sample is too large. */
const NEAR_FULL_SCALE_DBFS = -0.01

/** By how much the output has to be lowered so that its true peak is not above full scale, dB, 0.1 at a time. */
export function excessDb(truePeakDbtp: number): number {
  return Math.max(0, Math.ceil(truePeakDbtp * 10) / 10)
}

/** Any number does. It is always the same, so that a take and a chain always make the same file. */
const DITHER_SEED = 1

/** Makes the delivered file: the whole chain, at the take's own rate, as long as the take and aligned with it. */
export class Delivery {
  private stopping: AbortController | null = null
  private measuring = new AbortController()

  constructor(
    private readonly stores: Stores,
    private readonly compute: Pick<Compute, 'render' | 'measures' | 'samplesOver'>,
  ) {}

  setFormat(format: WavFormat): void {
    this.stores.delivery.setState({ format, delivered: null })
  }

  /**
   * Works out what the file would hold. Newest wins; what was known before is gone at once.
   * @returns gives it up
   */
  measure(): () => void {
    this.measuring.abort()
    const abort = new AbortController()
    this.measuring = abort
    const { delivery } = this.stores
    delivery.setState({ levels: null })
    void this.levels(abort.signal).then(
      (levels) => !abort.signal.aborted && delivery.setState({ levels }),
      (error: Error) =>
        !abort.signal.aborted &&
        delivery.setState({ problem: `The levels of the file could not be measured: ${error.message}` }),
    )
    return () => abort.abort()
  }

  /** Lowers the output of the chain by a gain at its end. It can be undone. */
  lower(byDb: number): void {
    this.stores.chain.getState().edit(lowerOutput(byDb))
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

  private async levels(signal: AbortSignal): Promise<FileLevels | null> {
    const { chain } = this.stores.chain.getState()
    const bits = integerBits[this.stores.delivery.getState().format]
    const measures = await this.compute.measures(chain, signal)
    if (!measures) return null
    const { integratedLufs, truePeakDbtp, samplePeakDbfs } = measures
    const mayClip = bits !== null && samplePeakDbfs !== null && samplePeakDbfs > NEAR_FULL_SCALE_DBFS
    const samplesOver = mayClip ? await this.compute.samplesOver(chain, bits, signal) : 0
    return samplesOver === null ? null : { integratedLufs, truePeakDbtp, samplesOver }
  }
}
