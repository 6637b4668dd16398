import { monitorParameter } from '../../session/listening/parameters'
import { useApp, useListen } from '../context/app-context'
import { Slider } from '../controls/slider'

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
