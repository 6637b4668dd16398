import { printedKey } from '../actions/key-table'
import { useApp, useListen, useTake } from '../context/app-context'
import { Choice } from '../controls/choice'
import { BackingSettings } from './backing-settings'
import { DifferenceSwitch } from './difference-switch'
import { Fold } from './fold'
import { LoopSwitch } from './loop-switch'
import { Monitor } from './monitor'

/** How it is heard: the voice alone or, when there is one, over its backing; or only what differs. */
export function HeardChoice() {
  const { listening } = useApp()
  const hasBacking = useTake(({ backing }) => backing !== null)
  const withBacking = useListen((state) => state.backingOn) && hasBacking
  const difference = useListen(({ heard }) => heard === 'difference')
  const voice = withBacking ? 'backing' : 'alone'
  return (
    <Fold
      label={difference ? 'difference' : voice}
      title="How it is heard"
      more={
        <>
          <LoopSwitch />
          <Monitor />
        </>
      }
    >
      <Choice
        legend="hear"
        showsLegend
        keyHint={printedKey('backing')}
        value={withBacking ? 'backing' : 'alone'}
        options={[
          { value: 'alone', label: 'alone', title: 'The voice alone' },
          { value: 'backing', label: 'with backing', disabled: !hasBacking },
        ]}
        onChange={(chosen) => listening.setBacking({ backingOn: chosen === 'backing' })}
      />
      {hasBacking && (
        <Fold label="level" title="Level and offset of the backing" always>
          <BackingSettings />
        </Fold>
      )}
      <DifferenceSwitch />
    </Fold>
  )
}
