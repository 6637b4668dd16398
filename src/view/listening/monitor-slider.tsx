import { monitorParameter } from '../../session/listening/parameters'
import { useApp, useListen } from '../app-context'
import { Slider } from '../fields/slider'

/** Sets how loud it is here. */
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
