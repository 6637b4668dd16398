/** What a file is brought in as. */
export type FileRole = 'take' | 'backing'

/** Sound files as they may be named; the content decides in the end. */
export const ACCEPTED_FILES = 'audio/*,.wav,.wave,.flac,.mp3,.m4a,.mp4,.aac,.ogg,.oga'

/** Files by what they become. */
export interface AssignedFiles<Item> {
  readonly take: Item | null
  readonly backing: Item | null
  /** Those there is no use for. */
  readonly unused: readonly Item[]
}

/**
 * Which of the files dropped on the area of `role` becomes what. One file is what its area says; of two or more,
 * the first is the take and the second the backing, wherever they were dropped, and there is no use for the others.
 */
export function assignFiles<Item>(files: readonly Item[], role: FileRole): AssignedFiles<Item> {
  const [first = null, second = null, ...unused] = files
  if (second === null && role === 'backing') return { take: null, backing: first, unused }
  return { take: first, backing: second, unused }
}
