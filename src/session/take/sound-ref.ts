/** How a document refers to a sound that is stored beside it. */
export interface SoundRef {
  /** Of the samples; null while unknown. */
  readonly hash: string | null
  readonly name: string
}

export function soundRef({
  name,
  hash = null,
}: {
  readonly name: string
  readonly hash?: string | null
}): SoundRef {
  return { hash, name }
}

/** What is loaded, if it is what a document refers to, as far as that can be told. */
export function loadedAs<Loaded extends Parameters<typeof soundRef>[0]>(
  ref: SoundRef | null,
  loaded: Loaded | null,
): Loaded | null {
  if (!ref || !loaded) return null
  const known = soundRef(loaded)
  return ref.hash === known.hash && ref.name === known.name ? loaded : null
}
