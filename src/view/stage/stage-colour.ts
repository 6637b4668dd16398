/** How many colours the stages take in turn. */
const COLOURS = 5

/** Colour of the stage at a position in the chain, from 0; beyond the fifth they come round again. */
export function stageColour(index: number): string {
  return `var(--stage-${(index % COLOURS) + 1})`
}
