import { useEffect, useRef } from 'react'
import { useApp, useDelivery, useTake } from '../context/app-context'
import { Choice } from '../controls/choice'
import { Sheet } from '../dialog/sheet'
import styles from './deliver.module.css'
import { DeliveredChain } from './delivered-chain'
import { DeliveryNews } from './delivery-news'
import { deliveredFacts, ditherWords, formats, PHASE_WORDS } from './delivery-words'
import { FileFigures } from './file-figures'

/** Makes the delivered file. */
export function DeliverSheet() {
  const { deliveries } = useApp()
  const sound = useTake(({ take }) => take?.sound ?? null)
  const format = useDelivery((state) => state.format)
  const working = useDelivery((state) => state.working)
  const dither = ditherWords[format]
  const busy = working !== null
  const save = useRef<HTMLButtonElement>(null)
  const wasBusy = useRef(false)
  // The pressed button lost the focus when it was disabled, and Cancel when it disappeared.
  useEffect(() => {
    if (wasBusy.current && !busy) save.current?.focus()
    wasBusy.current = busy
  }, [busy])
  return (
    <Sheet name="deliver" title="Deliver">
      <DeliveredChain />
      <Choice
        legend="Format"
        className={styles.formats}
        value={format}
        options={formats}
        onChange={(chosen) => deliveries.setFormat(chosen)}
      />
      {sound && (
        <>
          <FileFigures />
          <p className={styles.facts}>{deliveredFacts(sound)}</p>
          <p className={styles.facts}>{PHASE_WORDS}</p>
          {dither && <p className={styles.facts}>{dither}</p>}
        </>
      )}
      <p className={styles.facts}>
        Monitor volume and matching do not affect the file. With every stage off, the file holds the samples
        of your take, as far as the format can.
      </p>
      <div className={styles.actions}>
        <button
          ref={save}
          type="button"
          className={styles.main}
          disabled={busy || !sound}
          onClick={() => void deliveries.deliver()}
        >
          Save file
        </button>
        {busy && (
          <>
            <progress value={working} aria-label="Rendering" />
            <button type="button" onClick={() => deliveries.cancel()}>
              Cancel
            </button>
          </>
        )}
      </div>
      <DeliveryNews />
    </Sheet>
  )
}
