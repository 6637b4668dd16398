import { BackingChoice } from './backing-choice'
import styles from './listening.module.css'
import { MatchedSwitch } from './matched-switch'
import { Monitor } from './monitor'
import { Place } from './place'
import { PlayButton } from './play-button'
import { RemovedSwitch } from './removed-switch'
import { ScopeChoice } from './scope-choice'
import { SideSwitch } from './side-switch'

/** Everything about how the take is heard. Nothing here reaches a delivered file. */
export function ListeningBar() {
  return (
    <section className={styles.bar} aria-label="Listening">
      <PlayButton />
      <Place />
      <SideSwitch />
      <ScopeChoice />
      <BackingChoice />
      <MatchedSwitch />
      <RemovedSwitch />
      <Monitor />
    </section>
  )
}
