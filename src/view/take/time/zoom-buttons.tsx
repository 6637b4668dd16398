import { useListen } from '../../context/app-context'
import { ZOOM_STEP } from './seek-keys'
import type { TimeViewControl } from './use-time-view'
import styles from './zoom-buttons.module.css'

/** Zoom for those who have no wheel, no keys or no two fingers free. */
export function ZoomButtons({ time }: { time: TimeViewControl }) {
  const loop = useListen((state) => state.loop)
  return (
    <fieldset className={styles.buttons} aria-label="Zoom">
      <Button name="Zoom out" disabled={time.isWhole} onPress={() => time.zoom(1 / ZOOM_STEP)}>
        <path d="M5,10H15" />
      </Button>
      <Button name="Zoom in" disabled={time.isNearest} onPress={() => time.zoom(ZOOM_STEP)}>
        <path d="M5,10H15M10,5V15" />
      </Button>
      <Button name="Zoom to loop" disabled={!loop} onPress={() => loop && time.show(loop)}>
        <path d="M7,5H5V15H7M13,5H15V15H13" />
      </Button>
      <Button name="Whole take" disabled={time.isWhole} onPress={time.showAll}>
        <path d="M2,10H18M5,7L2,10L5,13M15,7L18,10L15,13" />
      </Button>
    </fieldset>
  )
}

interface ButtonProps {
  readonly name: string
  readonly disabled: boolean
  /** What is drawn on it. */
  readonly children: React.ReactNode
  onPress(): void
}

function Button({ name, disabled, children, onPress }: ButtonProps) {
  return (
    <button
      type="button"
      data-look="bare"
      title={name}
      aria-label={name}
      disabled={disabled}
      onClick={onPress}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {children}
      </svg>
    </button>
  )
}
