import { useStore } from 'zustand'
import { type ChainDoc, frequency, magnitudeDb, plain, signed } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { useListen } from '../context/app-context'
import { useMeasuredRange } from '../context/use-loop-evidence'
import { noteName } from './note-name'
import { type PointedStore, pointedHz } from './pointed-store'
import styles from './readout.module.css'
import { spectrumLevelAt } from './spectrum-level'
import { useSpectra } from './use-spectra'

interface ReadoutProps {
  readonly pointed: PointedStore
  readonly chain: ChainDoc
  readonly sampleRate: number
  readonly isDifference: boolean
}

/** What the plot reads at the pointer or at the handle with the focus; what it shows while there is neither. */
export function Readout({ pointed, chain, sampleRate, isDifference }: ReadoutProps) {
  const hz = useStore(pointed, pointedHz)
  const scope = useListen((state) => state.scope)
  const measured = useMeasuredRange()
  const spectra = useSpectra()
  if (hz === null)
    return (
      <p className={styles.readout} id={READOUT_ID}>
        {scope.kind === 'snapshots' && 'current chain; '}spectrum: {measured}
      </p>
    )
  const [responseDb = 0] = magnitudeDb(chain, [hz], sampleRate)
  const sides = sideWords(scope)
  const before = spectra && spectrumLevelAt(spectra.bypassed, hz)
  const behind = spectra && spectrumLevelAt(spectra.processed, hz)
  return (
    <p className={styles.readout} id={READOUT_ID}>
      <strong>{frequency(hz)}</strong> {noteName(hz)} <strong>{signed(responseDb, 1)} dB</strong>{' '}
      {isDifference
        ? `difference ${before === null || behind === null ? '–' : signed(behind - before, 1)} dB`
        : `${sides.bypassed} ${level(before)}, ${sides.processed} ${level(behind)} dBFS`}
    </p>
  )
}

/** Where handles find what is read at them. */
export const READOUT_ID = 'response-readout'

function level(db: number | null): string {
  return db === null ? '–' : plain(db, 0)
}
