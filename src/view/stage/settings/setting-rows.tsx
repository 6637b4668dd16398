import { Fragment, useCallback, useMemo } from 'react'
import { type Parameter, type StageDoc, stageDefinitions } from '../../../core'
import { setSetting } from '../../../session/chain/chain-edits'
import { useApp } from '../../context/app-context'
import { MatchMakeup } from './match-makeup'
import { SettingRow } from './setting-row'
import styles from './settings.module.css'

interface SettingRowsProps {
  readonly stage: StageDoc
  onHelp(help: string): void
}

/** One row for every setting of a stage that is a single value, made from the table of its kind. */
export function SettingRows({ stage, onHelp }: SettingRowsProps) {
  const { chain } = useApp()
  const { id, kind } = stage
  const settings = useMemo(() => {
    const { parameters, makeup } = stageDefinitions[kind]
    const rows: [string, Parameter][] = Object.entries(parameters)
    return rows
      .filter(([, parameter]) => parameter.type !== 'list')
      .map(([key, parameter]) => ({
        key,
        parameter,
        isMakeup: parameter === makeup?.parameter,
        change: (value: number | string | boolean) =>
          chain.getState().edit(setSetting(id, key, value), `${id} ${key}`),
      }))
  }, [chain, id, kind])
  const rest = useCallback(() => chain.getState().endGesture(), [chain])
  const values = new Map<string, unknown>(Object.entries(stage.settings))
  const rows = settings.map(({ key, parameter, isMakeup, change }) => (
    <Fragment key={key}>
      <SettingRow
        parameter={parameter}
        value={values.get(key)}
        onHelp={onHelp}
        onChange={change}
        onRest={rest}
      />
      {isMakeup && <MatchMakeup stageId={id} onHelp={onHelp} />}
    </Fragment>
  ))
  return <div className={`${styles.rows} ${styles.pairs}`}>{rows}</div>
}
