import { useState } from 'react'
import { BackingChoice } from './backing-choice'
import styles from './listening.module.css'
import { MatchedSwitch } from './matched-switch'
import { Monitor } from './monitor'
import { Place } from './place'
import { PlayButton } from './play-button'
import { RemovedSwitch } from './removed-switch'
import { ScopeChoice } from './scope-choice'
import { SideSwitch } from './side-switch'

/**
 * Everything about how the take is heard. Nothing here reaches a delivered file. On a narrow screen what is
 * changed less often waits behind one button, so that the bar does not cover the page.
 */
export function ListeningBar() {
  const [opened, setOpened] = useState(false)
  return (
    <section className={styles.bar} aria-label="Listening">
      <PlayButton />
      <Place />
      <SideSwitch />
      <div id="compared" className={opened ? styles.compared : `${styles.compared} ${styles.folded}`}>
        <ScopeChoice />
        <BackingChoice />
        <MatchedSwitch />
        <RemovedSwitch />
      </div>
      <Monitor />
      <button
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
