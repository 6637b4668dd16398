import { useId, useState } from 'react'
import { useApp, useTake } from '../../context/app-context'
import styles from './match-makeup.module.css'
import { Told } from './told'

interface MatchMakeupProps {
  readonly stageId: string
  onHelp(help: string): void
}

const HELP = 'Sets the makeup gain so that the take is as loud after this stage as before it.'

const MATCHED = 'As loud after this stage as before it. Later stages may still change the loudness.'

/** Matches loudness by makeup gain. */
export function MatchMakeup({ stageId, onHelp }: MatchMakeupProps) {
  const app = useApp()
  const measured = useTake(({ take }) => take !== null && take.measures !== null)
  const helpId = useId()
  const [working, setWorking] = useState(false)
  const match = async () => {
    setWorking(true)
    onHelp(HELP)
    try {
      const matched = await app.matchMakeup(stageId)
      onHelp(matched ? MATCHED : 'Too little sound to match: the makeup gain is unchanged.')
    } catch {
      onHelp('The makeup gain could not be worked out and is unchanged. Try again.')
    } finally {
      setWorking(false)
    }
  }
  return (
    <Told help={HELP} onHelp={onHelp}>
      <span className={styles.tool}>
        <span id={helpId} hidden>
          {HELP}
        </span>
        <button
          type="button"
          aria-disabled={!measured || working}
          aria-busy={working}
          aria-label="Match loudness by makeup gain"
          aria-describedby={helpId}
          onClick={() => measured && !working && void match()}
        >
          {working ? 'matching …' : 'match loudness'}
        </button>
      </span>
    </Told>
  )
}
