export { demoTake } from './demo-take'
export type {
  DemoLabels,
  DemoTake,
  FaultKind,
  FaultLabel,
  PhonemeLabel,
  PhraseLabel,
} from './faults/labels'
export type { PhonemeKind } from './song/phonemes'
export { startingChain } from './starting-chain'
