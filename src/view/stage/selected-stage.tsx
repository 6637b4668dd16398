import { bandsOf, pictureOf, stageDefinitions } from '../../core'
import { useChain, useStageColour } from '../context/app-context'
import { usePassingWords } from '../context/use-passing-words'
import { StageGlyph } from '../controls/stage-glyph'
import { LazyStagePicture } from './lazy-stage-picture'
import styles from './selected-stage.module.css'
import { BandList } from './settings/band-list'
import { SettingRows } from './settings/setting-rows'
import { StageMenu } from './stage-menu'

/** The selected stage: its picture, to be worked in, and beside it its settings. */
export function SelectedStage() {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const [news, setNews] = usePassingWords()
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index] ?? null
  const menu = (
    <>
      <p className={styles.news} aria-live="polite">
        {news}
      </p>
      <StageMenu stage={stage} index={index} onNews={setNews} />
    </>
  )
  if (!stage) {
    return (
      <section className={styles.stage} aria-labelledby="selected-stage">
        <div className={styles.head}>
          <h2 id="selected-stage">No stage selected</h2>
          {menu}
        </div>
        <p className={styles.none}>Add a stage to the chain to see its settings here.</p>
      </section>
    )
  }
  const { label, purpose } = stageDefinitions[stage.kind]
  const bands = bandsOf(stage)
  const picture = pictureOf(stage)
  return (
    <section className={styles.stage} aria-labelledby="selected-stage">
      <div className={styles.head}>
        <h2 id="selected-stage" className={styles.title} title={purpose}>
          <Glyph stageId={stage.id} index={index} on={stage.on} /> {label}
          {!stage.on && <span className={styles.off}>off</span>}
        </h2>
        {menu}
      </div>
      <div className={picture ? styles.beside : styles.alone} key={stage.id}>
        {picture && (
          <div className={styles.picture}>
            <LazyStagePicture picture={picture} stage={stage} index={index} />
          </div>
        )}
        <div className={styles.settings}>
          {bands ? (
            <BandList stage={stage} bands={bands} stageIndex={index} onNews={setNews} />
          ) : (
            <SettingRows stage={stage} onNews={setNews} />
          )}
        </div>
      </div>
    </section>
  )
}

function Glyph({ stageId, index, on }: { stageId: string; index: number; on: boolean }) {
  return <StageGlyph colour={useStageColour(stageId)} index={index} on={on} />
}
