import { useCallback, useState } from 'react'
import { bandsOf, pictureOf, stageDefinitions } from '../../core'
import { useChain, useStageColour } from '../context/app-context'
import { usePassingWords } from '../context/use-passing-words'
import { StageGlyph } from '../controls/stage-glyph'
import { HelpLine } from './help-line'
import { LazyStagePicture } from './lazy-stage-picture'
import styles from './selected-stage.module.css'
import { BandList } from './settings/band-list'
import { SettingRows } from './settings/setting-rows'
import { StageNews } from './stage-news'
import { StageTools } from './stage-tools'

/** The controls of the selected stage, beside its picture. */
export function SelectedStage() {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const [help, setHelp] = useState({ stageId: selectedId, text: '' })
  const [news, setNews] = usePassingWords()
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index] ?? null
  const tell = useCallback((text: string) => setHelp({ stageId: selectedId, text }), [selectedId])
  // What was told of one stage is not true of the next.
  if (help.stageId !== selectedId) tell('')
  if (!stage) {
    return (
      <section className={styles.stage} aria-labelledby="selected-stage">
        <div className={styles.head}>
          <h2 id="selected-stage">No stage selected</h2>
          <StageNews news={news} beside={false} />
          <StageTools stage={null} onNews={setNews} />
        </div>
        <HelpLine text="" idle="Add a stage to the chain to see its settings here." />
      </section>
    )
  }
  const { label, purpose } = stageDefinitions[stage.kind]
  const bands = bandsOf(stage)
  const picture = pictureOf(stage)
  return (
    <section className={styles.stage} aria-labelledby="selected-stage">
      <div className={styles.head}>
        <h2 id="selected-stage" className={styles.title}>
          <Glyph stageId={stage.id} index={index} on={stage.on} /> {label}
          {!stage.on && <span className={styles.off}>off</span>}
        </h2>
        <StageNews news={news} beside={picture !== null} />
        <StageTools stage={stage} onNews={setNews} />
      </div>
      <div className={picture ? `${styles.parts} ${styles.beside}` : styles.parts} key={stage.id}>
        <HelpLine text={help.text} idle={purpose} />
        <div className={styles.settings}>
          {bands && <BandList stage={stage} bands={bands} stageIndex={index} onHelp={tell} />}
          <SettingRows stage={stage} onHelp={tell} />
        </div>
        {picture && <LazyStagePicture picture={picture} stage={stage} index={index} />}
      </div>
    </section>
  )
}

function Glyph({ stageId, index, on }: { stageId: string; index: number; on: boolean }) {
  return <StageGlyph colour={useStageColour(stageId)} index={index} on={on} />
}
