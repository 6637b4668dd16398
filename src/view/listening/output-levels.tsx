import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { plain } from '../../core'
import { useApp } from '../context/app-context'

/** Calm enough to read, ms. */
const EVERY_MS = 250
/** What counts as silence, dBFS. */
const SILENCE_DBFS = -90
/** Loudness is not shown below the absolute gate of ITU-R BS.1770-5, LUFS. */
const SILENCE_LUFS = -70

/** What goes to the output: the highest peak of the last quarter of a second, and momentary loudness. */
export function OutputLevels() {
  const { listen, trial } = useApp()
  // They would tell hidden sides apart.
  const isHidden = useStore(trial, ({ running }) => running !== null)
  const [words, setWords] = useState('silent')
  useEffect(() => {
    let highest = Number.NEGATIVE_INFINITY
    const stop = listen.subscribe(({ playing, outputPeakDb }) => {
      if (playing) highest = Math.max(highest, outputPeakDb)
    })
    const timer = setInterval(() => {
      const { playing, momentaryLufs } = listen.getState()
      setWords(levelWords(highest, playing ? momentaryLufs : Number.NEGATIVE_INFINITY))
      highest = Number.NEGATIVE_INFINITY
    }, EVERY_MS)
    return () => {
      stop()
      clearInterval(timer)
    }
  }, [listen])
  return (
    <span title="At the output: peak, and loudness of the last 400 ms">
      {isHidden ? 'levels not shown' : words}
    </span>
  )
}

function levelWords(peakDb: number, lufs: number): string {
  if (peakDb <= SILENCE_DBFS) return 'silent'
  const peak = `${plain(peakDb, 0)} dBFS`
  return lufs > SILENCE_LUFS ? `${peak}, ${plain(lufs, 0)} LUFS` : peak
}
