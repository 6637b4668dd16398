import { useApp, useTake } from '../context/app-context'
import { useFilePickers } from '../context/file-pickers'
import { useScreenStore } from '../context/screen-context'
import { takeFacts } from './facts'
import styles from './header.module.css'
import { MeasuredFacts } from './measured-facts'
import { ProjectorSwitch } from './projector-switch'
import { ThemeChoice } from './theme-choice'
import { UndoButtons } from './undo-buttons'

/** The open take, and what can be opened, delivered and looked up. */
export function TheHeader() {
  const { takes } = useApp()
  const screen = useScreenStore()
  const { chooseTake, chooseBacking } = useFilePickers()
  const take = useTake((state) => state.take)
  const name = take?.name ?? 'no take'
  const facts = take ? takeFacts(take).join(' · ') : ''
  return (
    <header className={styles.header}>
      <h1 className={styles.name}>Evenhand</h1>
      <p className={styles.take}>
        <span className={styles.takeName} title={name}>
          <bdi>{name}</bdi>
        </span>{' '}
        <span className={styles.facts}>
          {take && <span className={styles.dot}>· </span>}
          {facts}
        </span>
        <span className={styles.stays} title="This page reads files in the browser and sends nothing">
          Your audio never leaves this computer
        </span>
      </p>
      <nav className={styles.actions} aria-label="Main">
        <button
          type="button"
          title="WAV, FLAC, MP3, M4A or OGG. Your audio never leaves this computer."
          onClick={chooseTake}
        >
          Open take
        </button>
        <button
          type="button"
          disabled={!take}
          title="What the voice is heard over. Your audio never leaves this computer."
          onClick={chooseBacking}
        >
          Open backing
        </button>
        <button type="button" onClick={() => void takes.openDemo()}>
          Demo
        </button>
        <button
          type="button"
          data-class-view
          disabled={!take}
          onClick={() => screen.setState({ sheet: 'trial' })}
        >
          Blind trial
        </button>
        <button type="button" disabled={!take} onClick={() => screen.setState({ sheet: 'deliver' })}>
          Deliver
        </button>
        <button type="button" data-class-view onClick={() => screen.setState({ sheet: 'keys' })}>
          Keys{' '}
          <span aria-hidden="true" className={styles.keyHint}>
            ?
          </span>
        </button>
        <button type="button" onClick={() => screen.setState({ sheet: 'terms' })}>
          Terms
        </button>
        <ProjectorSwitch />
        <ThemeChoice />
      </nav>
      <div className={styles.second}>
        <MeasuredFacts />
        <UndoButtons />
      </div>
    </header>
  )
}
