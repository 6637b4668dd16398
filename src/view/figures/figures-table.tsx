import { stageDefinitions } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen, useTake } from '../context/app-context'
import { useLoopEvidence } from '../context/use-loop-evidence'
import { usePendingWords } from '../context/use-pending-words'
import { Unseen } from '../controls/unseen'
import { useSize } from '../hooks/use-size'
import { useTextScale } from '../hooks/use-text-scale'
import { ComparedCaption } from './compared-caption'
import { FigureRow } from './figure-row'
import { figures } from './figures'
import styles from './figures-table.module.css'
import { ReductionRow } from './reduction-row'

/** From this width on the figures of both sides are printed, CSS pixels at the usual text size; else only the processed. */
const WIDE_PX = 320

/** What names the table stands beneath it, so that its rows share the height that is left. */
const CAPTION_ID = 'figures-caption'

/** Each figure as a line with a dot for each side, printed, with the change between the printed figures. */
export function FiguresTable() {
  const evidence = useEvidence((state) => state.evidence)
  const loop = useLoopEvidence()
  const isWorking = useEvidence((state) => state.working !== null || state.isLoopWorking)
  const problem = useEvidence((state) => state.problem)
  const sides = sideWords(useListen((state) => state.scope))
  const side = useListen((state) => state.side)
  const hasTake = useTake((state) => state.take !== null)
  const pending = usePendingWords() === '…' ? '…' : ''
  const [holder, { width }] = useSize()
  const isWide = width >= WIDE_PX * useTextScale()
  const of = loop ?? evidence
  const chain = useChain((state) => state.chain)
  const { stages } = evidence?.chains.processed ?? chain
  const other = side === 'processed' ? 'bypassed' : 'processed'
  const headings = (
    <tr>
      <td />
      <th scope="col">{sides.bypassed}</th>
      <th scope="col">{sides.processed}</th>
      <th scope="col">change</th>
    </tr>
  )
  return (
    <>
      <p className={problem === null ? styles.note : styles.problem}>
        {problem === null ? `hollow ${sides[other]}, solid ${sides[side]}` : 'not up to date'}
      </p>
      <div className={styles.holder} ref={holder}>
        <table className={styles.table} aria-labelledby={CAPTION_ID} aria-busy={hasTake && isWorking}>
          <colgroup>
            <col className={styles.labels} />
            <col />
            <col className={styles.values} />
            <col className={styles.changes} />
          </colgroup>
          {isWide ? (
            <thead className={styles.head}>{headings}</thead>
          ) : (
            <Unseen as="thead">{headings}</Unseen>
          )}
          <tbody>
            {figures.map((figure) => (
              <FigureRow
                key={figure.key}
                figure={figure}
                bypassed={of?.bypassed.measures ?? null}
                processed={of?.processed.measures ?? null}
                heard={side}
                isWide={isWide}
                pending={pending}
              />
            ))}
            {stages.map((stage, index) =>
              stage.on && stageDefinitions[stage.kind].reducesGain ? (
                <ReductionRow
                  key={stage.id}
                  stage={stage}
                  index={index}
                  reduction={
                    (loop ? loop.reductions.get(stage.id) : evidence?.stages.get(stage.id)?.reduction) ?? null
                  }
                  pending={pending}
                />
              ) : null,
            )}
          </tbody>
        </table>
        <p className={styles.caption} id={CAPTION_ID}>
          <ComparedCaption />
        </p>
      </div>
    </>
  )
}
