import { useId, useRef, useState } from 'react'
import type { Sound } from '../../core'
import { useEvidence } from '../context/app-context'
import { useSize } from '../hooks/use-size'
import { LanesStack } from './lanes-stack'
import { Playhead } from './playhead'
import { SeekSurface } from './seek-surface'
import { SpectrogramSwitch } from './spectrogram/spectrogram-switch'
import styles from './take.module.css'
import { TimesButton } from './time/times-button'
import { TimesPanel } from './time/times-panel'
import { useTimeView } from './time/use-time-view'
import { ZoomButtons } from './time/zoom-buttons'

/** Wave, gain reduction of each stage and loudness along time, without and with; and ways to go along it. */
export function TakeLanes({ sound }: { sound: Sound }) {
  const measuring = useEvidence((state) => state.working !== null)
  const time = useTimeView(sound)
  const surface = useRef<HTMLDivElement>(null)
  const [pictures, { width }] = useSize()
  const [timesOpen, setTimesOpen] = useState(false)
  const panelId = useId()
  const { sampleRate } = sound
  return (
    <>
      <div className={styles.lanes} aria-busy={measuring}>
        <div ref={pictures} className={styles.over}>
          <SeekSurface sound={sound} time={time} width={width} surface={surface} />
        </div>
        <LanesStack view={time.view} sampleRate={sampleRate} width={width} />
        <div className={`${styles.over} ${styles.untouched}`}>
          <Playhead time={time} width={width} sampleRate={sampleRate} />
        </div>
      </div>
      <div className={styles.zoom}>
        <ZoomButtons time={time} />
      </div>
      <div className={styles.spectrogram}>
        <SpectrogramSwitch />
      </div>
      <div className={styles.times}>
        <TimesButton
          sampleRate={sampleRate}
          isOpen={timesOpen}
          controls={panelId}
          onPress={() => setTimesOpen(!timesOpen)}
        />
      </div>
      {timesOpen && (
        <div className={styles.panel}>
          <TimesPanel sound={sound} id={panelId} />
        </div>
      )}
    </>
  )
}
