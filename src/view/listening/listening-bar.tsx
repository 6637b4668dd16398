import { useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import { PlayButton } from '../playback/play-button'
import { barNotes, meters, NoPart } from './bar-parts'
import { Caption } from './caption'
import { HeardChoice } from './heard-choice'
import styles from './listening.module.css'
import { Monitor } from './monitor'
import { Place } from './place'
import { ScopeChoice } from './scope-choice'
import { SideSwitch } from './side-switch'

const NO_PROPS = {}

/**
 * Everything about how the take is heard. Nothing here reaches a delivered file. On a narrow screen what is
 * changed less often waits behind two buttons, so that the bar does not cover the page.
 */
export function ListeningBar() {
  const hasTake = useTake(({ take }) => take !== null)
  return (
    <section id="listening" className={styles.bar} aria-label="Listening" tabIndex={-1}>
      <div className={styles.notes} role="status">
        {hasTake && <LazyView part={barNotes} props={NO_PROPS} failed={FailedPart} />}
      </div>
      <PlayButton />
      <Place />
      <SideSwitch />
      <Caption />
      <div className={styles.choices}>
        <ScopeChoice />
        <HeardChoice />
      </div>
      <div className={styles.levels}>
        <Monitor />
        {hasTake && <LazyView part={meters} props={NO_PROPS} failed={NoPart} />}
      </div>
    </section>
  )
}
