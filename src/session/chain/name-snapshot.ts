import { isolated, shownName } from '../../files/file-name'
import { MAX_SNAPSHOT_NAME, type SnapshotKey, snapshotLetters, type VersionsEdit } from './snapshots'

/**
 * Gives a stored version a name, or none.
 * @param typed as it was typed: taken in one line, without marks that turn text around, and cut where it is too long
 */
export function nameSnapshot(key: SnapshotKey, typed: string): VersionsEdit {
  return ({ chain, snapshots }) => {
    const before = snapshots[key]
    const name = snapshotNameOf(typed)
    if (!before || name === before.name) return null
    const letter = snapshotLetters[key]
    return {
      chain,
      snapshots: { ...snapshots, [key]: { ...before, name } },
      words: name ? `named ${letter} ${isolated(name)}` : `took the name off ${letter}`,
    }
  }
}

function snapshotNameOf(typed: string): string {
  const inOneLine = shownName(typed).replace(/\s+/g, ' ').trim()
  const cut = inOneLine.slice(0, MAX_SNAPSHOT_NAME)
  // A character of two units is not cut in half.
  return (cut.isWellFormed() ? cut : cut.slice(0, -1)).trimEnd()
}
