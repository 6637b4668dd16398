export { demoTake } from './demo-take'
export type {
  DemoLabels,
  DemoTake,
  FaultKind,
  FaultLabel,
  PhonemeKind,
  PhonemeLabel,
  PhraseLabel,
} from './labels'
export { startingChain } from './starting-chain'
