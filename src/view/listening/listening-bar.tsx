import type { ComponentType, ReactNode } from 'react'
import type { LazyPart } from '../../session/lazy-part'
import { useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { type FailedViewProps, LazyView } from '../lazy/lazy-view'
import { PlayButton } from '../playback/play-button'
import { barParts } from './bar-parts'
import styles from './listening.module.css'
import { Monitor } from './monitor'
import { Place } from './place'
import { SideSwitch } from './side-switch'

/**
 * Everything about how the take is heard. Nothing here reaches a delivered file. On a narrow screen what is
 * changed less often waits behind two buttons, so that the bar does not cover the page.
 */
export function ListeningBar() {
  return (
    <section id="listening" className={styles.bar} aria-label="Listening" tabIndex={-1}>
      <div className={styles.notes} role="status">
        <WithTake part={barParts.barNotes} failed={FailedPart} />
      </div>
      <PlayButton />
      <Place />
      <SideSwitch />
      <div className={styles.caption}>
        <WithTake part={barParts.caption} />
      </div>
      <div className={styles.choices}>
        <WithTake part={barParts.choices} />
      </div>
      <div className={styles.levels}>
        <Monitor />
        <WithTake part={barParts.meters} />
      </div>
    </section>
  )
}

interface WithTakeProps {
  readonly part: LazyPart<ComponentType>
  /** Where the part could not be loaded; the notes, which come in the same file, say it for all. */
  readonly failed?: (props: FailedViewProps) => ReactNode
}

const NO_PROPS = {}

/** A part of the bar that there is no use for before there is a take. */
function WithTake({ part, failed = Nothing }: WithTakeProps) {
  const hasTake = useTake(({ take }) => take !== null)
  return hasTake && <LazyView part={part} props={NO_PROPS} failed={failed} />
}

function Nothing() {
  return null
}
