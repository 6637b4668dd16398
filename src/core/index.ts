/** The public face of the core: everything other code, and other people's code, stands on. */
export { type BandSweep, SWEEP_GAIN_DB, SWEEP_Q, sweepWords, sweptChain } from './chain/band-sweep'
export { bypassed, type ChainDoc, chainOf, chainToJson, MAX_STAGES } from './chain/chain-doc'
export { ChainError } from './chain/chain-error'
export { ChainProcessor } from './chain/chain-processor'
export {
  type Comparison,
  comparisonOf,
  listeningPointIndexOf,
  type Scope,
} from './chain/compare'
export { type DetectorLevel, detectorLevelSteps, levelHopFrames, SILENT_DBFS } from './chain/detector-level'
export { idleChain } from './chain/idle-chain'
export { type JsonIssue, jsonIssue, quoted } from './chain/json-issue'
export { chainLatencyFrames } from './chain/latency'
export { alignedSound, type SoundWithLeads, takeFrames } from './chain/leads'
export { magnitudeDb } from './chain/magnitude'
export { MAX_ID_LENGTH, parseChain } from './chain/parse'
export { type ReductionSummary, reductionSummary } from './chain/reduction'
export {
  type Rendering,
  type RenderOptions,
  renderChain,
  renderSteps,
} from './chain/render'
export { renderDifference } from './chain/render-difference'
export { type BehindStage, runStage, soundBehindSteps, workingCopySteps } from './chain/run-stage'
export { isAlike, withSameParts } from './chain/same-parts'
export { sameSound, sameStage } from './chain/same-sound'
export { boundedList } from './chain/settings-schema'
export { bandLetter, numberedBand, numberedStage } from './chain/stage-names'
export { type ChainHost, MAX_BLOCK_FRAMES } from './chain/stage-slot'
export { hopEnd, hopStart, TRACE_HOP_FRAMES, type Trace, traceWithin } from './chain/trace'
export { TraceRun } from './chain/trace-run'
export { withSettings } from './chain/with-settings'
export { reductionDb, type StaticCurve } from './dsp/dynamics/gain-computer'
export * from './measure'
export { dbToGain, gainToDb } from './sound/decibels'
export type { FrameRange } from './sound/frame-range'
export { sampleHashSteps } from './sound/sample-hash'
export { durationSeconds, excerpt, frameCount, type Sound } from './sound/sound'
export { type SoundPart, soundParts } from './sound/sound-parts'
export { finished, partOf, type Steps } from './sound/steps'
export {
  isStageKind,
  type SettingsByKind,
  type StageDoc,
  type StageKind,
  stageDefinitions,
  stageKinds,
} from './stages'
export { defaultStage } from './stages/defaults'
export {
  type BandSettings,
  type BandShape,
  bandParameters,
  type EqualiserDesign,
  usedBandSettings,
} from './stages/equaliser/band'
export {
  frequency,
  plain,
  plainInSentence,
  signed,
  signedInSentence,
} from './stages/number-format'
export { trimKind, trimStage, withTrim } from './stages/output-trim'
export type {
  ChoiceParameter,
  ListParameter,
  NumberParameter,
  Parameter,
  ParameterTable,
  SwitchParameter,
  Unit,
} from './stages/parameter'
export { defaultSettings } from './stages/parameter-defaults'
export { printNumber, printValue } from './stages/print-value'
export type { Processor, ProcessorHost, ReductionReader } from './stages/processor'
export { MAX_LOOKAHEAD_MS } from './stages/shared-parameters'
export type { StageDefinition } from './stages/stage-definition'
export { type DetectorOf, detectorOf, levelStage, type SetByLevel } from './stages/stage-detector'
export { describeStage, makeupOf, pictureOf, stageLatencyFrames } from './stages/stage-facts'
export { bandDesignOf, bandsOf, itemsOf, maxItemsOf, withBands } from './stages/stage-items'
export type { SibilanceDetection, StagePicture, StagePictureKind } from './stages/stage-picture'
export {
  type AddedHarmonics,
  addedHarmonicSteps,
  addedHarmonics,
  sineAsLoudDbfs,
} from './study/added-harmonics'
export { fewestRareRight, probabilityByChance, probabilityOfAtLeast } from './study/blind-trial-chance'
export { drawOrder, type HiddenSide } from './study/blind-trial-order'
export { powerSentence, printProbability, type TrialResult, trialSentence } from './study/blind-trial-words'
export { type LevelHistogram, levelHistogram, shareAbove } from './study/level-histogram'
export { matchingMakeupDb, matchingMakeupSteps } from './study/matching-makeup'
export { type SibilantLevel, sibilantLevelSteps, sibilantLevels } from './study/sibilant-levels'
