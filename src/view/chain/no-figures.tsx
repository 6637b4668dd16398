/** In place of figures whose code could not be fetched: what they stand beside says in words what there is. */
export function NoFigures() {
  return null
}
