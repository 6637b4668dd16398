import {
  type BandSettings,
  bandParameters,
  bandsOf,
  type ChainDoc,
  chainOf,
  defaultSettings,
  defaultStage,
  MAX_STAGES,
  maxItemsOf,
  numberedBand,
  numberedStage,
  type Parameter,
  plainInSentence,
  printValue,
  type StageDoc,
  type StageKind,
  stageDefinitions,
  trimKind,
  trimStage,
  withBands,
  withSettings,
  withTrim,
} from '../../core'

/** A chain after an edit, and what the edit was in words, as they follow "Undo: ". */
export interface Edit {
  readonly chain: ChainDoc
  readonly words: string
}

/** Edits are functions of the current chain; null means there is nothing to do. */
export type ChainEdit = (chain: ChainDoc) => Edit | null

/** Switches a stage on or off. */
export function switchStage(stageId: string, on: boolean): ChainEdit {
  return (chain) =>
    replaced(
      chain,
      stageId,
      (stage) => ({ ...stage, on }),
      (stage) => `${nameOf(chain, stage)} ${on ? 'on' : 'off'}`,
    )
}

/**
 * Gives one setting of a stage a new value.
 * @throws ChainError when the parameter does not allow it
 */
export function setSetting(stageId: string, key: string, value: unknown): ChainEdit {
  return (chain) => {
    const stage = chain.stages.find(({ id }) => id === stageId)
    if (!stage) return null
    const before = new Map<string, unknown>(Object.entries(stage.settings)).get(key)
    const settings = { ...stage.settings, [key]: value }
    const words = settingWords(stageDefinitions[stage.kind].parameters, key, before, value)
    const owner = isAlone(chain, stage) ? '' : `${nameOf(chain, stage)}, `
    return checked(chain, stage, settings, `${owner}${words}`)
  }
}

/**
 * Gives one or more settings of a band new values, as one change.
 * @throws ChainError when a parameter does not allow its value
 */
export function setBand(stageId: string, bandIndex: number, patch: Partial<BandSettings>): ChainEdit {
  return (chain) => {
    const stage = chain.stages.find(({ id }) => id === stageId)
    const bands = stage && bandsOf(stage)
    const band = bands?.[bandIndex]
    if (!stage || !bands || !band) return null
    const before = new Map<string, unknown>(Object.entries(band))
    const name = bandName(chain, stage, bandIndex)
    const { on, ...others } = patch
    const words = Object.entries(others).map(([key, value]) =>
      settingWords(bandParameters, key, before.get(key), value),
    )
    const switched = on === undefined ? name : `${name} ${on ? 'on' : 'off'}`
    const changed = bands.map((other, index) => (index === bandIndex ? { ...other, ...patch } : other))
    return checked(chain, stage, withBands(stage, changed).settings, [switched, ...words].join(', '))
  }
}

/** Adds a band after the others of a stage: a neutral bell, unless `band` says otherwise. */
export function addBand(stageId: string, band: Partial<BandSettings> = {}): ChainEdit {
  return (chain) => {
    const stage = chain.stages.find(({ id }) => id === stageId)
    const before = stage && bandsOf(stage)
    if (!stage || !before || before.length >= maxItemsOf(stage)) return null
    const bands = [...before, { ...defaultSettings<BandSettings>(bandParameters), ...band }]
    return checked(
      chain,
      stage,
      { ...stage.settings, bands },
      `add band ${bandName(chain, stage, bands.length - 1)}`,
    )
  }
}

/** Removes a band of a stage. */
export function removeBand(stageId: string, bandIndex: number): ChainEdit {
  return (chain) => {
    const stage = chain.stages.find(({ id }) => id === stageId)
    const before = stage && bandsOf(stage)
    if (!stage || !before?.[bandIndex]) return null
    const bands = before.filter((_, index) => index !== bandIndex)
    return checked(
      chain,
      stage,
      withBands(stage, bands).settings,
      `remove band ${bandName(chain, stage, bandIndex)}`,
    )
  }
}

/** Adds a stage of `kind` with default settings at the end of the chain. */
export function addStage(kind: StageKind): ChainEdit {
  return (chain) => {
    if (chain.stages.length >= MAX_STAGES) return null
    const stage = defaultStage(kind, freeId(chain, kind))
    return { chain: chainOf([...chain.stages, stage]), words: `add ${labelOf(kind)}` }
  }
}

/** Removes a stage. */
export function removeStage(stageId: string): ChainEdit {
  return (chain) => {
    const stage = chain.stages.find(({ id }) => id === stageId)
    if (!stage) return null
    return {
      chain: chainOf(chain.stages.filter((other) => other !== stage)),
      words: `remove ${nameOf(chain, stage)}`,
    }
  }
}

/** Inserts a copy of a stage right after it. */
export function duplicateStage(stageId: string): ChainEdit {
  return (chain) => {
    if (chain.stages.length >= MAX_STAGES) return null
    const stages = chain.stages.flatMap((stage) =>
      stage.id === stageId ? [stage, { ...stage, id: freeId(chain, stage.kind) }] : [stage],
    )
    const original = chain.stages.find(({ id }) => id === stageId)
    return original ? { chain: chainOf(stages), words: `duplicate ${nameOf(chain, original)}` } : null
  }
}

/** Resets the settings of a stage to their defaults. */
export function resetStage(stageId: string): ChainEdit {
  return (chain) =>
    replaced(
      chain,
      stageId,
      ({ kind, id, on }) => ({ ...defaultStage(kind, id), on }),
      (stage) => `reset ${nameOf(chain, stage)}`,
    )
}

/** Moves a stage to the position `toIndex`, from 0. */
export function moveStage(stageId: string, toIndex: number): ChainEdit {
  return (chain) => {
    const from = chain.stages.findIndex(({ id }) => id === stageId)
    const stage = chain.stages[from]
    if (!stage || toIndex < 0 || toIndex >= chain.stages.length || toIndex === from) return null
    const stages = chain.stages.filter((other) => other !== stage)
    stages.splice(toIndex, 0, stage)
    return {
      chain: chainOf(stages),
      words: `${nameOf(chain, stage)} ${toIndex < from ? 'earlier' : 'later'}`,
    }
  }
}

/** Lowers the output of the chain by `byDb`: by the gain at its end, or by one that is added there. */
export function lowerOutput(byDb: number): ChainEdit {
  return (chain) => {
    const { stages } = chain
    const words = `output lowered by ${plainInSentence(byDb, 1)} dB`
    const last = stages.at(-1)
    const lowered = last && withTrim(last, -byDb)
    if (lowered) return { chain: chainOf([...stages.slice(0, -1), lowered]), words }
    if (stages.length >= MAX_STAGES) return null
    const added = trimStage(freeId(chain, trimKind), -byDb)
    return { chain: chainOf([...stages, added]), words }
  }
}

/** What a stage is called in words: "compressor", or "2 Equaliser" where the chain has others of its kind. */
function nameOf(chain: ChainDoc, stage: StageDoc): string {
  return isAlone(chain, stage) ? labelOf(stage.kind) : numberedStage(chain.stages.indexOf(stage), stage.kind)
}

/** What a band is called on the curve, too: "2a". */
function bandName(chain: ChainDoc, stage: StageDoc, bandIndex: number): string {
  return numberedBand(chain.stages.indexOf(stage), bandIndex)
}

function isAlone({ stages }: ChainDoc, { kind }: StageDoc): boolean {
  return stages.filter((other) => other.kind === kind).length === 1
}

function labelOf(kind: StageKind): string {
  return stageDefinitions[kind].label.toLowerCase()
}

function settingWords(parameters: object, key: string, before: unknown, after: unknown): string {
  const rows = new Map<string, Parameter>(Object.entries(parameters))
  const parameter = rows.get(key)
  if (!parameter) return key
  // A single letter is a symbol, which small letters would make another of.
  const label = parameter.label.length === 1 ? parameter.label : parameter.label.toLowerCase()
  return `${label} ${fromTo(printValue(parameter, before), printValue(parameter, after))}`
}

/** "−18 to −24 dBFS": a unit that both share stands once, and a whole number has no decimals. */
function fromTo(before: string, after: string): string {
  const [from, to] = [before, after].map((printed) => printed.replace(/\.0+(?= |$)/, ''))
  const unit = / \S+$/.exec(after)?.[0]
  return unit && from?.endsWith(unit) ? `${from.slice(0, -unit.length)} to ${to}` : `${from} to ${to}`
}

/**
 * The chain with other settings of `stage`.
 * @throws ChainError when a parameter does not allow its value
 */
function checked(chain: ChainDoc, stage: StageDoc, settings: object, words: string): Edit {
  const changed = withSettings(stage, settings, `stages[${chain.stages.indexOf(stage)}]`)
  return { chain: chainOf(chain.stages.map((other) => (other === stage ? changed : other))), words }
}

function replaced(
  chain: ChainDoc,
  stageId: string,
  change: (stage: StageDoc) => StageDoc,
  words: (stage: StageDoc) => string,
): Edit | null {
  const stage = chain.stages.find(({ id }) => id === stageId)
  if (!stage) return null
  return {
    chain: chainOf(chain.stages.map((other) => (other === stage ? change(stage) : other))),
    words: words(stage),
  }
}

/** A name for a new stage that no stage of the chain has. */
export function freeId(chain: ChainDoc, kind: StageKind): string {
  const taken = new Set(chain.stages.map(({ id }) => id))
  let number = 1
  while (taken.has(`${kind}-${number}`)) number++
  return `${kind}-${number}`
}
