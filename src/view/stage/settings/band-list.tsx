import { useCallback, useRef } from 'react'
import { type BandSettings, maxItemsOf, type StageDoc } from '../../../core'
import { addBand, removeBand } from '../../../session/chain/chain-edits'
import { useApp } from '../../context/app-context'
import { Band } from './band'
import styles from './band-list.module.css'
import { SettingRows } from './setting-rows'

interface BandListProps {
  readonly stage: StageDoc
  readonly bands: readonly BandSettings[]
  /** Position of the stage in the chain, from 0. */
  readonly stageIndex: number
  onNews(news: string): void
}

/** The bands of a stage, each with the settings its shape uses, and what is set for all of them. */
export function BandList({ stage, bands, stageIndex, onNews }: BandListProps) {
  const { chain } = useApp()
  const adder = useRef<HTMLButtonElement>(null)
  const full = bands.length >= maxItemsOf(stage)
  const remove = useCallback(
    (bandIndex: number) => {
      chain.getState().edit(removeBand(stage.id, bandIndex))
      adder.current?.focus()
    },
    [chain, stage.id],
  )
  const add = (
    <button
      ref={adder}
      type="button"
      className={styles.add}
      aria-disabled={full}
      onClick={() => chain.getState().edit(addBand(stage.id))}
    >
      {full ? `No more than ${bands.length} bands` : 'Add a band'}
    </button>
  )
  return (
    <>
      <ol className={styles.bands} aria-label="Bands">
        {bands.map((band, bandIndex) => (
          <Band
            // Bands have no names of their own: the letter is the place.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            key={bandIndex}
            stageId={stage.id}
            stageIndex={stageIndex}
            band={band}
            bandIndex={bandIndex}
            onRemove={remove}
          />
        ))}
      </ol>
      <SettingRows stage={stage} tool={add} onNews={onNews} />
    </>
  )
}
