import type { NumberParameter } from '../../core'
import { useApp, useListen } from '../context/app-context'
import { Slider } from '../controls/slider'

/** The monitor volume, separate from the chain: as quiet as -60 dB, never above the file's own level. */
const monitorParameter: NumberParameter = {
  type: 'number',
  label: 'Monitor',
  unit: 'dB',
  min: -60,
  max: 0,
  default: -18,
  scale: 'linear',
  step: 1,
  digits: 0,
  help: 'Volume at your ears. It does not affect the delivered file.',
}

/** Sets the monitor volume. */
export function MonitorSlider() {
  const { listening } = useApp()
  const monitorDb = useListen((state) => state.monitorDb)
  return (
    <Slider
      parameter={monitorParameter}
      value={monitorDb}
      label="Monitor volume"
      onChange={(value) => listening.setMonitorDb(value)}
      onRest={() => undefined}
    />
  )
}
