import { useCallback, useState } from 'react'
import { useStore } from 'zustand'
import { plain } from '../../../core'
import type { ListenState } from '../../../session/listening/listen-store'
import { useApp } from '../../context/app-context'
import { isLimited } from './meter-geometry'
import styles from './meters.module.css'
import { useCalmReading } from './use-calm-reading'

/** What counts as silence, dBFS. */
const SILENCE_DBFS = -90
/** Loudness is not shown below the absolute gate of ITU-R BS.1770-5, LUFS. */
const SILENCE_LUFS = -70

interface Levels {
  readonly words: string
  readonly limited: boolean
}

const SILENT: Levels = { words: 'silent', limited: false }

/** What goes to the output: the highest peak of the last quarter of a second, and momentary loudness. */
export function OutputLevels() {
  const { trial } = useApp()
  // They would tell hidden sides apart.
  const isHidden = useStore(trial, ({ running }) => running !== null)
  const [{ words, limited }, setLevels] = useState(SILENT)
  const begin = useCallback(() => {
    let highest = Number.NEGATIVE_INFINITY
    return {
      collect({ playing, outputPeakDb }: ListenState) {
        if (playing) highest = Math.max(highest, outputPeakDb)
      },
      tell({ playing, momentaryLufs }: ListenState) {
        const found = levelsOf(highest, playing ? momentaryLufs : Number.NEGATIVE_INFINITY)
        setLevels((shown) => (shown.words === found.words && shown.limited === found.limited ? shown : found))
        highest = Number.NEGATIVE_INFINITY
      },
    }
  }, [])
  useCalmReading(begin)
  return (
    <span
      className={limited ? styles.limited : undefined}
      title="At the output: peak, limited to −1 dBFS, and loudness of the last 400 ms"
    >
      {isHidden ? 'levels not shown' : words}
    </span>
  )
}

function levelsOf(peakDb: number, lufs: number): Levels {
  if (peakDb <= SILENCE_DBFS) return SILENT
  const limited = isLimited(peakDb)
  const peak = limited ? 'limited' : `${plain(peakDb, 0)} dBFS`
  return { words: lufs > SILENCE_LUFS ? `${peak}, ${plain(lufs, 0)} LUFS` : peak, limited }
}
