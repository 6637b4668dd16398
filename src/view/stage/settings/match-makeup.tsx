import { useId, useState } from 'react'
import { useApp, useTake } from '../../context/app-context'
import styles from './match-makeup.module.css'

interface MatchMakeupProps {
  readonly stageId: string
  /** Told what came of it. */
  onNews(news: string): void
}

const HELP = 'Sets the makeup gain so that the take is as loud after this stage as before it.'

/** Matches loudness by makeup gain. */
export function MatchMakeup({ stageId, onNews }: MatchMakeupProps) {
  const app = useApp()
  const measured = useTake(({ take }) => take !== null && take.measures !== null)
  const helpId = useId()
  const [working, setWorking] = useState(false)
  const match = async () => {
    setWorking(true)
    try {
      const matched = await app.matchMakeup(stageId)
      onNews(matched ? 'As loud after this stage as before it.' : 'Too little sound to match: unchanged.')
    } catch {
      onNews('The makeup gain could not be worked out and is unchanged. Try again.')
    } finally {
      setWorking(false)
    }
  }
  return (
    <>
      <span id={helpId} hidden>
        {HELP}
      </span>
      <button
        type="button"
        className={styles.match}
        title={HELP}
        aria-disabled={!measured || working}
        aria-busy={working}
        aria-label="Match loudness by makeup gain"
        aria-describedby={helpId}
        onClick={() => measured && !working && void match()}
      >
        {working ? 'matching …' : 'match loudness'}
      </button>
    </>
  )
}
