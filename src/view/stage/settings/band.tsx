import { memo, useCallback, useMemo } from 'react'
import {
  type BandSettings,
  bandLetter,
  bandParameters,
  SWEEP_GAIN_DB,
  SWEEP_Q,
  usedBandSettings,
} from '../../../core'
import { setBand } from '../../../session/chain/chain-edits'
import { useApp, useListen, useStageColour } from '../../context/app-context'
import { ChoiceField } from '../../controls/choice-field'
import { StageGlyph } from '../../controls/stage-glyph'
import { Switch } from '../../controls/switch'
import styles from './band.module.css'
import { SettingRow } from './setting-row'
import { SweepButton } from './sweep-button'

interface BandProps {
  readonly stageId: string
  readonly stageIndex: number
  readonly band: BandSettings
  readonly bandIndex: number
  onRemove(bandIndex: number): void
}

/** One band: its letter, shape and switch, and the settings its shape listens to. */
export const Band = memo(({ stageId, stageIndex, band, bandIndex, onRemove }: BandProps) => {
  const { chain, comparing, listening } = useApp()
  const colour = useStageColour(stageId)
  const compared = useListen(
    ({ scope }) => scope.kind === 'band' && scope.stageId === stageId && scope.bandIndex === bandIndex,
  )
  const owner = `Band ${bandLetter(bandIndex)}`
  const used = usedBandSettings(band)
  const change = useCallback(
    (key: keyof BandSettings, value: number | string | boolean) =>
      chain
        .getState()
        .edit(setBand(stageId, bandIndex, { [key]: value }), `${stageId} band ${bandIndex} ${key}`),
    [chain, stageId, bandIndex],
  )
  const rest = useCallback(() => chain.getState().endGesture(), [chain])
  const sweep = useListen(({ sweep: at }) =>
    at?.stageId === stageId && at.bandIndex === bandIndex ? at : null,
  )
  const changes = useMemo(
    () => ({
      frequencyHz: (value: number | string | boolean) =>
        sweep && typeof value === 'number'
          ? listening.setSweep({ ...sweep, frequencyHz: value })
          : change('frequencyHz', value),
      gainDb: (value: number | string | boolean) => change('gainDb', value),
      slopeDbPerOctave: (value: number | string | boolean) => change('slopeDbPerOctave', value),
      q: (value: number | string | boolean) => change('q', value),
    }),
    [sweep, listening, change],
  )
  // What is heard in place of the settings meanwhile.
  const swept: Partial<BandSettings> = sweep
    ? { frequencyHz: sweep.frequencyHz, gainDb: SWEEP_GAIN_DB, q: SWEEP_Q }
    : {}
  const row = (key: keyof typeof changes) => (
    <SettingRow
      parameter={bandParameters[key]}
      value={swept[key] ?? band[key]}
      owner={owner}
      note={swept[key] === undefined ? undefined : 'sweep'}
      onChange={changes[key]}
      onRest={rest}
    />
  )
  return (
    <li className={band.on ? styles.band : styles.off} aria-label={owner}>
      <div className={styles.head}>
        <StageGlyph colour={colour} index={stageIndex} on={band.on} text={bandLetter(bandIndex)} />
        <Switch
          on={band.on}
          label={owner}
          onChange={(on) => {
            change('on', on)
            rest()
          }}
        />
        <ChoiceField
          parameter={bandParameters.shape}
          value={band.shape}
          label={`${owner}, ${bandParameters.shape.label}`}
          onChange={(shape) => {
            change('shape', shape)
            rest()
          }}
        />
        <SweepButton
          stageId={stageId}
          bandIndex={bandIndex}
          frequencyHz={band.frequencyHz}
          onTake={(hz) => {
            change('frequencyHz', hz)
            rest()
          }}
        />
        <button
          type="button"
          className={styles.compare}
          aria-pressed={compared}
          aria-label={`Compare band ${bandLetter(bandIndex)} with its bypass`}
          title="Compares this band with its bypass; everything else is unchanged"
          onClick={() => comparing.switchBand(stageId, bandIndex)}
        >
          compare
        </button>
        <button
          type="button"
          data-look="bare"
          className={styles.remove}
          aria-label={`Remove band ${bandLetter(bandIndex)}`}
          title={`Remove band ${bandLetter(bandIndex)}`}
          onClick={() => onRemove(bandIndex)}
        >
          ×
        </button>
      </div>
      <div className={styles.settings}>
        {row('frequencyHz')}
        {used.gain && row('gainDb')}
        {used.slope && <div className={styles.choice}>{row('slopeDbPerOctave')}</div>}
        {used.q && row('q')}
      </div>
    </li>
  )
})
