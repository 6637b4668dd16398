import type { Sound } from '../../core'
import type { ListenOptions, ListenSettings } from '../engine/messages'
import workletUrl from '../thread/evenhand.worklet.ts?worker&url'
import { LISTEN_PROCESSOR } from '../thread/processor-names'
import { isRunning, resumed, soundInSilentMode } from './output-state'
import { PlayerError } from './player-error'

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
      'The part of this page that plays could not be loaded. Reload the page.',
      { cause },
    )
  })
  await starting
  signal.throwIfAborted()
  // One that does not run is of no use to a later press of play either.
  if (!isRunning(context)) {
    throw new PlayerError('blocked', 'The browser did not let sound start. Press play once more.')
  }
  const options: ListenOptions = { take: take.channels, settings }
  const node = new AudioWorkletNode(context, LISTEN_PROCESSOR, {
    numberOfInputs: 0,
    outputChannelCount: [2],
    processorOptions: options,
  })
  node.connect(context.destination)
  return { context, node }
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
