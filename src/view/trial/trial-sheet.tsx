import { useEffect, useState } from 'react'
import { useApp } from '../context/app-context'
import { useScreen } from '../context/screen-context'
import { Sheet } from '../dialog/sheet'
import { History } from './history'
import { LeaveQuestion } from './leave-question'
import { Result } from './result'
import { Round } from './round'
import { SetUp } from './set-up'
import { useTrial } from './use-trial'

/** The blind trial from its beginning to its result. Nothing beneath it can be changed while it is open. */
export function TrialSheet() {
  const { trials } = useApp()
  const isOpen = useScreen(({ sheet }) => sheet === 'trial')
  const running = useTrial((state) => state.running)
  const shown = useTrial(({ shown: number, history }) => history.find((trial) => trial.number === number))
  const [leaving, setLeaving] = useState(false)

  // However it was closed, what had not ended is abandoned.
  useEffect(() => {
    if (isOpen) return
    trials.abandon()
    trials.prepare()
    setLeaving(false)
  }, [isOpen, trials])
  useEffect(() => () => trials.abandon(), [trials])

  const mayClose = () => {
    if (!running) return true
    setLeaving(true)
    return false
  }
  const leave = () => {
    trials.abandon()
    setLeaving(false)
  }
  return (
    <Sheet name="trial" title="Blind trial" mayClose={mayClose}>
      {running && leaving && <LeaveQuestion onStay={() => setLeaving(false)} onLeave={leave} />}
      {running && !leaving && <Round key={running.round} trial={running} onStop={() => setLeaving(true)} />}
      {!running && (shown ? <Result trial={shown} /> : <SetUp />)}
      {!running && <History />}
    </Sheet>
  )
}
