import { useState } from 'react'
import { stageDefinitions } from '../../core'
import { useChain } from '../bench-context'
import { BandList } from './band-list'
import { HelpLine } from './help-line'
import { SettingRows } from './setting-rows'
import styles from './stage-at-hand.module.css'
import { StageGlyph } from './stage-glyph'
import { StagePicture } from './stage-picture'

/** The controls of the selected stage, beside its picture. */
export function StageAtHand() {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const [help, setHelp] = useState('')
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index]
  if (!stage) {
    return (
      <section className={styles.stage} aria-labelledby="stage-at-hand">
        <h2 id="stage-at-hand">No stage at hand</h2>
        <p className={styles.purpose}>Add a stage to the path, and its settings appear here.</p>
      </section>
    )
  }
  const { label, purpose } = stageDefinitions[stage.kind]
  return (
    <section className={styles.stage} aria-labelledby="stage-at-hand">
      <h2 id="stage-at-hand" className={styles.title}>
        <StageGlyph index={index} on={stage.on} /> {label}
        {!stage.on && <span className={styles.off}>off</span>}
      </h2>
      <p className={styles.purpose}>{purpose}</p>
      <div className={styles.parts} key={stage.id}>
        <div className={styles.settings}>
          {stage.kind === 'equaliser' && <BandList stage={stage} stageIndex={index} onHelp={setHelp} />}
          <SettingRows stage={stage} onHelp={setHelp} />
          <HelpLine text={help} />
        </div>
        <StagePicture stage={stage} index={index} />
      </div>
    </section>
  )
}
