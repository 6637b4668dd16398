/** What a file is brought in as. */
export type FileRole = 'take' | 'backing'

/** Sound files as they may be named; the content decides in the end. */
export const ACCEPTED_FILES = 'audio/*,.wav,.wave,.flac,.mp3,.m4a,.mp4,.aac,.ogg,.oga'

/**
 * Which of the files dropped on the area of `role` becomes what. One file is what its area says; of two or more,
 * the first is the take and the second the backing, wherever they were dropped.
 */
export function assignFiles<Item>(
  files: readonly Item[],
  role: FileRole,
): { readonly take: Item | null; readonly backing: Item | null } {
  const [first, second] = files
  if (first === undefined) return { take: null, backing: null }
  if (second !== undefined) return { take: first, backing: second }
  return role === 'take' ? { take: first, backing: null } : { take: null, backing: first }
}
