import { useEffect, useRef } from 'react'
import { trialSentence } from '../../core'
import { rightOf, type TrialRecord } from '../../session/trials/trial-record'
import { useApp } from '../context/app-context'
import { RoundsTable } from './rounds-table'
import styles from './trial.module.css'

/** The result of a trial: figures, what they mean and no more, and round by round. */
export function Result({ trial }: { trial: TrialRecord }) {
  const { trials } = useApp()
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const right = rightOf(trial)
  const { rounds, answers, compared } = trial
  return (
    <>
      <h3 ref={heading} tabIndex={-1} className={styles.heading}>
        {trial.finished
          ? `${right} of ${rounds} right`
          : `Abandoned after ${answers.length} of ${rounds} rounds`}
      </h3>
      <p className={styles.facts}>Compared: {compared}.</p>
      <p>
        {trial.finished
          ? trialSentence({ right, rounds })
          : 'An abandoned trial has no result, but it counts as started.'}
      </p>
      {answers.length > 0 && <RoundsTable trial={trial} />}
      <div className={styles.actions}>
        <button type="button" className={styles.main} data-look="solid" onClick={() => trials.prepare()}>
          Another trial
        </button>
      </div>
    </>
  )
}
