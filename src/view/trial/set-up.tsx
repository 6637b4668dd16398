import { useState } from 'react'
import { powerSentence } from '../../core'
import { comparedWords } from '../../session/comparison/compared-words'
import { sideWords } from '../../session/comparison/side-words'
import { DEFAULT_ROUNDS, type TrialKind } from '../../session/trials/trial-record'
import { refusalWords } from '../../session/trials/trial-refusal'
import { useApp, useChain, useEvidence, useListen } from '../context/app-context'
import { Choice } from '../controls/choice'
import { NumberRow } from '../controls/number-row'
import { roundsParameter } from './rounds-parameter'
import styles from './trial.module.css'
import { kindWords, matchingWords } from './trial-words'
import { useTrialRefusal } from './use-trial'

const kinds: readonly TrialKind[] = ['name-x', 'which-of-two']

/** What is compared, in which kind of round, how often; and what that can show at best. */
export function SetUp() {
  const { trials } = useApp()
  const chain = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const sides = sideWords(scope)
  const looping = useListen((state) => state.loop !== null)
  const matching = useEvidence(({ evidence }) => evidence?.matching ?? null)
  const refusal = useTrialRefusal()
  const [kind, setKind] = useState<TrialKind>('name-x')
  const [rounds, setRounds] = useState(DEFAULT_ROUNDS)
  return (
    <>
      <p>
        Compares <strong>{comparedWords(chain, scope, listeningPoint)}</strong>
        {scope.kind === 'snapshots' ? '' : ' with its bypass'}, hidden, and tests the answers against
        guessing.{' '}
        {looping
          ? 'The loop repeats.'
          : 'A short loop, set on the take first, makes small differences easier to hear.'}
      </p>
      <Choice
        legend="Kind of round"
        className={styles.kinds}
        value={kind}
        options={kinds.map((value) => ({ value, label: kindWords(value, sides) }))}
        onChange={(value) => setKind(value)}
      />
      <div className={styles.rounds}>
        <NumberRow
          parameter={roundsParameter}
          value={rounds}
          onChange={(value) => setRounds(Math.round(value))}
          onRest={() => undefined}
        />
      </div>
      <p className={styles.facts}>{powerSentence(rounds)}</p>
      <div className={styles.actions}>
        <button
          type="button"
          className={styles.main}
          data-look="solid"
          disabled={refusal !== null}
          onClick={() => trials.begin(kind, rounds)}
        >
          Begin
        </button>
        <p className={styles.status} role="status">
          {refusal !== null && refusalWords[refusal]}
          {refusal === null && matching && matchingWords(matching, sides)}
        </p>
      </div>
    </>
  )
}
