import { snapshotLetters } from '../../session/chain/snapshots'
import { storedAs } from '../../session/chain/stored-as'
import { isolated } from '../../session/take/take-store'
import { useChain } from '../context/app-context'

/** What the file is made with, and which stored version that is. */
export function DeliveredChain() {
  const words = useChain(({ chain, snapshots }) => {
    const stored = storedAs(chain, snapshots)
    if (!stored) return ''
    const letter = snapshotLetters[stored.key]
    return stored.shown === letter
      ? `, stored as ${letter}`
      : `, “${isolated(stored.shown)}” (stored as ${letter})`
  })
  return <p>The take processed by the whole chain{words}, as a WAV file on this computer.</p>
}
