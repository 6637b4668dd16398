import type { App } from '../../session/app'
import type { KeptName } from '../../session/comparison/snapshots'

/** Keeps a version no longer. Where it is being compared, the other one is, with the chain as it is now; else the chain. */
export function discardKept(
  { kept, keptVersions, listen, listening }: Pick<App, 'kept' | 'keptVersions' | 'listen' | 'listening'>,
  name: KeptName,
): void {
  kept.setState({ [name]: null })
  if (listen.getState().scope.kind !== 'snapshots') return
  const { a, b } = kept.getState()
  if (a || b) keptVersions.compare()
  else listening.setScope({ kind: 'chain' })
}
