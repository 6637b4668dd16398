import { Fragment } from 'react'
import { type Parameter, type StageDoc, stageDefinitions } from '../../core'
import { setSetting } from '../../state/chain-edits'
import { useBench } from '../bench-context'
import { SettingRow } from './setting-row'
import styles from './setting-rows.module.css'
import { settingTools } from './setting-tools'

interface SettingRowsProps {
  readonly stage: StageDoc
  onHelp(help: string): void
}

/** One row for every setting of a stage that is a single value, made from the table of its kind. */
export function SettingRows({ stage, onHelp }: SettingRowsProps) {
  const { chain } = useBench()
  const parameters: [string, Parameter][] = Object.entries(stageDefinitions[stage.kind].parameters)
  const values = new Map<string, unknown>(Object.entries(stage.settings))
  const rows = parameters
    .filter(([, parameter]) => parameter.type !== 'list')
    .map(([key, parameter]) => {
      const Tool = settingTools.get(parameter)
      return (
        <Fragment key={key}>
          <SettingRow
            parameter={parameter}
            value={values.get(key)}
            onHelp={onHelp}
            onChange={(value) =>
              chain.getState().edit(setSetting(stage.id, key, value), `${stage.id} ${key}`)
            }
            onRest={() => chain.getState().endGesture()}
          />
          {Tool && <Tool stageId={stage.id} onHelp={onHelp} />}
        </Fragment>
      )
    })
  return <div className={`${styles.rows} ${styles.pairs}`}>{rows}</div>
}
