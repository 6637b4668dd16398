import type { App } from '../../session/app'

/** Compares the whole chain, or the stage at hand; the other of the two when left out. */
export function switchScope(
  { chain, listen, listening }: Pick<App, 'chain' | 'listen' | 'listening'>,
  to: 'chain' | 'stage' = listen.getState().scope.kind === 'chain' ? 'stage' : 'chain',
): void {
  const { selectedId } = chain.getState()
  if (to === 'chain' || selectedId === null) listening.setScope({ kind: 'chain' })
  else listening.setScope({ kind: 'stage', stageId: selectedId })
}
