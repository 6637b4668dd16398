import { nextTask } from '../../compute/port/next-task'
import { frameCount, type Sound, soundParts } from '../../core'
import { LISTEN_PROCESSOR, type ListenOptions, type ListenSettings, type ToThread } from '../engine/messages'
import workletUrl from '../thread/evenhand.worklet.ts?worker&url'
import { isRunning, resumed, soundInSilentMode } from './output-state'
import { PlayerError } from './player-error'

/**
 * Why no sound can be played in this browser at all, or null where it can. AudioWorklet exists only in secure contexts
 * (Web Audio API, "AudioWorklet"): over https, and on this computer.
 */
export function missingOutput(): PlayerError | null {
  const missing = ['AudioContext', 'AudioWorkletNode'].find((name) => !(name in globalThis))
  if (missing === undefined) return null
  return new PlayerError(
    'no-output',
    `This browser gives the page no ${missing}, so nothing can be played. Figures, curves and delivery still work. To listen, open Evenhand over https, or in a current browser.`,
  )
}

/** A context that runs, with the listening engine in it. */
export interface Output {
  readonly context: AudioContext
  readonly node: AudioWorkletNode
}

/**
 * Opens an output at the take's own rate. Call it from a key press or click, or after one: browsers start sound only
 * then.
 * @param signal closes the output, or gives it up while it is being opened
 * @throws PlayerError when the browser gives no sound; the signal's reason when it was given up
 */
export async function openOutput(
  take: Sound,
  settings: ListenSettings,
  signal: AbortSignal,
): Promise<Output> {
  const missing = missingOutput()
  if (missing) throw missing
  const context = newContext(take.sampleRate)
  const close = () => {
    if (context.state !== 'closed') void context.close()
  }
  signal.addEventListener('abort', close, { once: true })
  // At once, within the gesture: some browsers forget it while the module loads.
  const starting = resumed(context)
  soundInSilentMode()
  await context.audioWorklet.addModule(workletUrl).catch((cause: unknown) => {
    throw new PlayerError(
      'no-output',
      'The part of Evenhand that plays could not be loaded. Check the connection and press play again; if that fails, reload the page.',
      { cause },
    )
  })
  await starting
  signal.throwIfAborted()
  // One that does not run is of no use to a later press of play either.
  if (!isRunning(context)) {
    throw new PlayerError('blocked', 'The browser did not let sound start. Press play once more.')
  }
  const options: ListenOptions = { channelCount: take.channels.length, frames: frameCount(take), settings }
  const node = new AudioWorkletNode(context, LISTEN_PROCESSOR, {
    numberOfInputs: 0,
    outputChannelCount: [2],
    processorOptions: options,
  })
  await giveTake(node, take, signal)
  node.connect(context.destination)
  return { context, node }
}

/** Gives the take away part by part; the page goes on in between. */
async function giveTake({ port }: AudioWorkletNode, take: Sound, signal: AbortSignal): Promise<void> {
  for (const { fromFrame, channels } of soundParts(take)) {
    if (fromFrame > 0) await nextTask()
    signal.throwIfAborted()
    const part: ToThread = { type: 'take-part', fromFrame, channels }
    port.postMessage(
      part,
      channels.map(({ buffer }) => buffer),
    )
  }
}

function newContext(sampleRate: number): AudioContext {
  try {
    return new AudioContext({ sampleRate, latencyHint: 'interactive' })
  } catch (cause) {
    throw new PlayerError(
      'no-output',
      `The browser gives no sound output at ${sampleRate} Hz. Check the output device, then press play.`,
      { cause },
    )
  }
}
