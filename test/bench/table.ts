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
    wanted === undefined ? '' : `${wanted} x ${ratio >= wanted ? 'reached' : 'NOT reached'}`,
  ])
  const all = [['what', 'ours', 'reference', 'ratio', 'wanted'], ...cells]
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...all.map((row) => row[column]?.length ?? 0)))
  for (const row of all) console.log(row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '))
}

/** A time in words. */
export function milliseconds(value: number): string {
  return `${value.toFixed(value < 10 ? 2 : 0)} ms`
}
