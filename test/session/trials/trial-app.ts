import { vi } from 'vitest'
import type { Evidence } from '../../../src/compute/evidence'
import { type Comparison, comparisonOf, type Sound } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { createChainStore } from '../../../src/session/chain/chain-store'
import { createEvidenceStore } from '../../../src/session/evidence-store'
import type { HiddenHearing } from '../../../src/session/listening/listen-settings'
import { createListenStore } from '../../../src/session/listening/listen-store'
import { createTakeStore, type Take } from '../../../src/session/take/take-store'
import { createTrialStore } from '../../../src/session/trials/trial-store'
import { Trials } from '../../../src/session/trials/trials'
import { evidenceHere } from '../../setup/evidence-here'

const SAMPLE_RATE = 8000

/** One second of a loud and a soft tone: enough to match by. */
const sound: Sound = {
  sampleRate: SAMPLE_RATE,
  channels: [
    Float32Array.from(
      { length: SAMPLE_RATE },
      (_, n) => (n < 4000 ? 0.5 : 0.1) * Math.sin((2 * Math.PI * 440 * n) / SAMPLE_RATE),
    ),
  ],
}

export const take: Take = { name: 'Take 3.wav', sound, header: null, replacedSamples: 0, measures: null }

/** Everything there is to know about a comparison on the test's take. */
export function evidenceOf(comparison: Comparison): Evidence {
  return evidenceHere(sound, comparison)
}

/** Trials of the demo's whole chain, with `order` as what chance draws; what the player was told is written down. */
export function trialApp(order: readonly boolean[]) {
  const chain = createChainStore(startingChain())
  const takes = createTakeStore()
  const listen = createListenStore()
  const evidence = createEvidenceStore()
  const trial = createTrialStore()
  takes.setState({ take })
  evidence.setState({ evidence: evidenceOf(comparisonOf(chain.getState().chain, { kind: 'chain' })) })
  const heard: (HiddenHearing | null)[] = []
  const bits = [...order]
  let milliseconds = Date.UTC(2024, 2, 1)
  const listening = {
    hear: (hidden: HiddenHearing | null) => void heard.push(hidden),
    play: vi.fn(async () => listen.setState({ playing: true })),
    stop: vi.fn(() => listen.setState({ playing: false })),
  }
  const trials = new Trials({ chain, take: takes, listen, evidence, trial }, listening, {
    randomBit: () => bits.shift() ?? false,
    now: () => {
      milliseconds += 1500
      return new Date(milliseconds)
    },
  })
  /** Lets what is listened to sound for so long, with a report every 100 ms. */
  const sounds = (seconds: number) => {
    for (let tenths = 0; tenths < Math.round(seconds * 10); tenths++)
      listen.setState(({ positionFrame }) => ({ positionFrame: positionFrame + SAMPLE_RATE / 10 }))
  }
  /** Listens to what is hidden long enough, and answers. */
  const answer = async (said: 'bypassed' | 'processed') => {
    for (const choice of trial.getState().running?.kind === 'which-of-two'
      ? (['a', 'b'] as const)
      : ['x' as const]) {
      await trials.listenTo(choice)
      sounds(1)
    }
    trials.answer(said)
  }
  return { chain, take: takes, listen, evidence, trial, trials, heard, listening, sounds, answer }
}
