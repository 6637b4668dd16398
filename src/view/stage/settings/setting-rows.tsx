import { type ReactNode, useCallback, useId, useMemo, useState } from 'react'
import { type Parameter, type StageDoc, stageDefinitions } from '../../../core'
import { setSetting } from '../../../session/chain/chain-edits'
import { useApp } from '../../context/app-context'
import { MatchMakeup } from './match-makeup'
import { SettingRow } from './setting-row'
import styles from './settings.module.css'

interface SettingRowsProps {
  readonly stage: StageDoc
  /** What is done with the settings above, beside what opens the rare ones. */
  readonly tool?: ReactNode
  onNews(news: string): void
}

/**
 * One row for every setting of a stage that is a single value, made from the table of its kind: those that are rare
 * only once they are asked for.
 */
export function SettingRows({ stage, tool, onNews }: SettingRowsProps) {
  const { chain } = useApp()
  const { id, kind } = stage
  const [isOpen, setOpen] = useState(false)
  const moreId = useId()
  const settings = useMemo(() => {
    const rows: [string, Parameter][] = Object.entries(stageDefinitions[kind].parameters)
    return rows.flatMap(([key, parameter]) =>
      parameter.type === 'list'
        ? []
        : {
            key,
            parameter,
            isRare: 'rare' in parameter && parameter.rare === true,
            change: (value: number | string | boolean) =>
              chain.getState().edit(setSetting(id, key, value), `${id} ${key}`),
          },
    )
  }, [chain, id, kind])
  const rest = useCallback(() => chain.getState().endGesture(), [chain])
  const values = new Map<string, unknown>(Object.entries(stage.settings))
  const rows = (isRare: boolean) =>
    settings
      .filter((setting) => setting.isRare === isRare)
      .map(({ key, parameter, change }) => (
        <SettingRow key={key} parameter={parameter} value={values.get(key)} onChange={change} onRest={rest} />
      ))
  const rare = settings
    .filter((setting) => setting.isRare)
    .map(({ parameter }) => parameter.label.toLowerCase())
  const tools = stageDefinitions[kind].makeup ? <MatchMakeup stageId={id} onNews={onNews} /> : tool
  return (
    <>
      <div className={styles.rows}>{rows(false)}</div>
      {(rare.length > 0 || tools) && (
        <div className={styles.foot}>
          {rare.length > 0 && (
            <button
              type="button"
              data-look="bare"
              className={styles.more}
              aria-expanded={isOpen}
              aria-controls={isOpen ? moreId : undefined}
              aria-label={`More settings: ${rare.join(', ')}`}
              title={`More settings: ${rare.join(', ')}`}
              onClick={() => setOpen(!isOpen)}
            >
              More
            </button>
          )}
          {tools}
        </div>
      )}
      {isOpen && (
        <div id={moreId} className={styles.rows}>
          {rows(true)}
        </div>
      )}
    </>
  )
}
