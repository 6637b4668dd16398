import { dbToGain, frameCount, type Sound } from '../../../src/core'
import { saturationCurve } from '../../../src/core/dsp/oversampling/saturation-curve'
import { CROSSOVER_HZ, DRIVE_DB, FIVE_BANDS, GAIN_DB } from '../chains'

/** What stands between a source and the output: the node that takes the sound and the one that gives it. */
interface NativeGraph {
  readonly input: AudioNode
  readonly output: AudioNode
}

/** Points of a shaper's curve: so many that lines between them are as good as the curve itself. */
const CURVE_POINTS = 4097

/** Runs a take through native nodes, offline. */
export async function renderNative(
  take: Sound,
  graphIn: (context: OfflineAudioContext) => NativeGraph,
): Promise<void> {
  const context = new OfflineAudioContext(1, frameCount(take), take.sampleRate)
  const buffer = context.createBuffer(1, frameCount(take), take.sampleRate)
  buffer.copyToChannel(new Float32Array(take.channels[0] ?? []), 0)
  const source = new AudioBufferSourceNode(context, { buffer })
  const { input, output } = graphIn(context)
  source.connect(input)
  output.connect(context.destination)
  source.start()
  await context.startRendering()
}

const FILTER_TYPES: Record<string, BiquadFilterType> = {
  'high-pass': 'highpass',
  bell: 'peaking',
  'high-shelf': 'highshelf',
}

/** The five-section equaliser. */
export function fiveBiquads(context: OfflineAudioContext): NativeGraph {
  return inSeries(
    FIVE_BANDS.map(
      ({ shape, frequencyHz, gainDb, q }) =>
        new BiquadFilterNode(context, {
          type: FILTER_TYPES[shape] ?? 'peaking',
          frequency: frequencyHz,
          gain: gainDb,
          Q: shape === 'high-pass' ? 20 * Math.log10(q) : q,
        }),
    ),
  )
}

/** The nearest there is to the compressor. */
export function nativeCompressor(context: OfflineAudioContext): NativeGraph {
  return inSeries([
    new DynamicsCompressorNode(context, { threshold: -24, ratio: 12, knee: 6, attack: 0.003, release: 0.25 }),
  ])
}

/** The nearest there is to the de-esser: two filters for each half of the crossover, a compressor behind the upper one. */
export function nativeDeEsser(context: OfflineAudioContext): NativeGraph {
  const half = (type: BiquadFilterType) => {
    const settings = { type, frequency: CROSSOVER_HZ, Q: 20 * Math.log10(Math.SQRT1_2) }
    return inSeries([new BiquadFilterNode(context, settings), new BiquadFilterNode(context, settings)])
  }
  const [low, high] = [half('lowpass'), half('highpass')]
  const [input, output] = [new GainNode(context), new GainNode(context)]
  input.connect(low.input)
  input.connect(high.input)
  low.output.connect(output)
  high.output
    .connect(
      new DynamicsCompressorNode(context, { threshold: -30, ratio: 20, knee: 0, attack: 0, release: 0.02 }),
    )
    .connect(output)
  return { input, output }
}

/** The nearest there is to the saturator: the same curve at four times the rate. */
export function nativeShaper(context: OfflineAudioContext): NativeGraph {
  const drive = dbToGain(DRIVE_DB)
  const curve = Float32Array.from({ length: CURVE_POINTS }, (_, i) =>
    saturationCurve((2 * i) / (CURVE_POINTS - 1) - 1, drive, 0),
  )
  return inSeries([new WaveShaperNode(context, { curve, oversample: '4x' })])
}

/** The gain stage. */
export function nativeGain(context: OfflineAudioContext): NativeGraph {
  return inSeries([new GainNode(context, { gain: dbToGain(GAIN_DB) })])
}

function inSeries(nodes: readonly AudioNode[]): NativeGraph {
  const [input] = nodes
  const output = nodes.at(-1)
  if (!input || !output) throw new Error('no nodes to connect')
  for (const [k, node] of nodes.slice(1).entries()) nodes[k]?.connect(node)
  return { input, output }
}
