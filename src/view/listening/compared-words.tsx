import { comparedWords } from '../../session/comparison/compared-words'
import { useChain, useListen } from '../context/app-context'

/** What the switch of sides compares: "the whole chain", "3 Compressor". */
export function ComparedWords() {
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const words = useChain(({ chain }) =>
    scope.kind === 'snapshots' ? 'versions' : comparedWords(chain, scope, listeningPoint),
  )
  return <span title={words}>{words}</span>
}
