import { type ComponentType, type KeyboardEvent, useRef, useState } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import { PlayButton } from '../playback/play-button'
import { BackingChoice } from './backing-choice'
import { DifferenceSwitch } from './difference-switch'
import { HeardLine } from './heard-line'
import styles from './listening.module.css'
import { MatchedSwitch } from './matched-switch'
import { Monitor } from './monitor'
import { Place } from './place'
import { ScopeChoice } from './scope-choice'
import { SideSwitch } from './side-switch'

/** The notes of the bar: they are about a take. */
export const barNotes: LazyPart<ComponentType> = lazyPart(
  'The note on what is heard',
  async () => (await import('./bar-notes')).BarNotes,
)

const NO_PROPS = {}

/**
 * Everything about how the take is heard. Nothing here reaches a delivered file. On a narrow screen what is
 * changed less often waits behind one button, so that the bar does not cover the page.
 */
export function ListeningBar() {
  const [opened, setOpened] = useState(false)
  const hasTake = useTake(({ take }) => take !== null)
  const opener = useRef<HTMLButtonElement>(null)
  const fold = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !opened) return
    setOpened(false)
    opener.current?.focus()
  }
  return (
    <section id="listening" className={styles.bar} aria-label="Listening" tabIndex={-1} onKeyDown={fold}>
      <div className={styles.notes} role="status">
        {hasTake && <LazyView part={barNotes} props={NO_PROPS} failed={FailedPart} />}
      </div>
      <PlayButton />
      <Place />
      <SideSwitch />
      {!opened && <HeardLine />}
      <div
        id="compared"
        className={opened ? styles.compared : `${styles.compared} ${styles.folded}`}
        onChange={({ target }) => {
          // Arrow keys go through the choices one by one: the pointer alone has chosen with its first.
          if (
            target instanceof HTMLInputElement &&
            target.type === 'radio' &&
            !target.matches(':focus-visible')
          )
            setOpened(false)
        }}
      >
        <ScopeChoice />
        <BackingChoice />
        <MatchedSwitch />
        <DifferenceSwitch />
      </div>
      <Monitor />
      <button
        ref={opener}
        type="button"
        className={styles.unfold}
        aria-expanded={opened}
        aria-controls="compared"
        onClick={() => setOpened(!opened)}
      >
        {opened ? 'less' : 'what is compared'}
      </button>
    </section>
  )
}
