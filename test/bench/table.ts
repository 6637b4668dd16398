/** One line of the table: how something of ours compares with a reference measured in the same run. */
export interface Row {
  readonly what: string
  readonly ours: string
  readonly reference: string
  /** How many times as fast as the reference; above 1 we are faster. */
  readonly ratio: number
  readonly wanted?: number
}

/** Prints rows with their columns lined up. */
export function printTable(rows: readonly Row[]): void {
  const cells = rows.map(({ what, ours, reference, ratio, wanted }) => [
    what,
    ours,
    reference,
    `${ratio.toFixed(2)} x`,
    wanted === undefined ? '' : `${wanted} x ${reached(ratio >= wanted)}`,
  ])
  printCells([['what', 'ours', 'reference', 'ratio', 'wanted'], ...cells])
}

/** Prints lines of as many cells each, lined up. */
export function printCells(lines: readonly (readonly string[])[]): void {
  const widths =
    lines[0]?.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0))) ?? []
  for (const line of lines)
    console.log(line.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '))
}

export function reached(isReached: boolean): string {
  return isReached ? 'reached' : 'NOT reached'
}

/** A time in words. */
export function milliseconds(value: number): string {
  return `${value.toFixed(value < 10 ? 2 : 0)} ms`
}
