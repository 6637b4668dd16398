import { useEffect, useId, useRef, useState } from 'react'
import type { HiddenSide } from '../../core'
import { choicesOf, type TrialChoice } from '../../session/trials/trial-record'
import type { RunningTrial } from '../../session/trials/trial-store'
import { answersOf } from '../actions/trial-keys'
import { useApp, useTake } from '../context/app-context'
import { KeyedChoice } from './keyed-choice'
import { RoundSound } from './round-sound'
import styles from './trial.module.css'
import { answerName, choiceName, listenFirst, questionOf } from './trial-words'
import { useTrialKeys } from './use-trial-keys'

const ANSWER_KEYS = [
  { key: '←', keyName: 'ArrowLeft' },
  { key: '→', keyName: 'ArrowRight' },
] as const

/** One round: what can be listened to, what is asked, and nothing from which the answer could be read. */
export function Round({ trial, onStop }: { trial: RunningTrial; onStop: () => void }) {
  const { trials, listening } = useApp()
  const problems = useTake((state) => state.problems)
  const [said, setSaid] = useState<HiddenSide | null>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  // Each round announces itself, and no button of the last one keeps the focus.
  useEffect(() => heading.current?.focus(), [])

  const { kind, sides, round, rounds, choice, heard } = trial
  const reasonId = useId()
  const listen = (to: TrialChoice) => void trials.listenTo(to)
  const answer = () => said !== null && trials.answer(said)
  useTrialKeys(kind, (key) => {
    if (key.does === 'listen') listen(key.choice)
    else if (key.does === 'say') heard && setSaid(key.said)
    else if (key.does === 'answer') answer()
    else void listening.togglePlay()
  })
  return (
    <div className={styles.round}>
      <h3 ref={heading} tabIndex={-1} className={styles.heading}>
        Round {round} of {rounds}
      </h3>
      <KeyedChoice
        legend="Listen to"
        value={choice}
        options={choicesOf(kind).map((value, index) => {
          const key = String(index + 1)
          return { value, label: choiceName(value, sides), key, keyName: key }
        })}
        onChange={listen}
      />
      <RoundSound />
      <KeyedChoice
        legend={questionOf(kind, sides)}
        value={said}
        options={answersOf(kind).map((value, index) => ({
          value,
          label: answerName(trial, value),
          ...ANSWER_KEYS[index === 0 ? 0 : 1],
        }))}
        refusedBy={heard ? undefined : reasonId}
        onChange={(value) => setSaid(value)}
      />
      <div className={styles.actions}>
        <button
          type="button"
          className={styles.main}
          data-look="solid"
          disabled={said === null}
          onClick={answer}
        >
          {round < rounds ? 'Answer, next round' : 'Answer and see the result'}
        </button>
        <span className={`${styles.note} ${styles.key}`}>Enter</span>
        <button type="button" className={styles.aside} onClick={onStop}>
          Quit trial
        </button>
      </div>
      <p id={reasonId} role="status" className={styles.reason}>
        {heard ? '' : listenFirst[kind]}
      </p>
      {problems.map(({ message }) => (
        <p key={message} role="alert" className={styles.problem}>
          {message}
        </p>
      ))}
    </div>
  )
}
