/** Whether two chains or stages, plain JSON made in the same way, say the same. */
export function sameDocument(a: object, b: object | undefined): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}
