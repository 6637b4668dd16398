import { printedKey } from '../../actions/key-table'
import { useApp, useChain, useTake } from '../../context/app-context'
import { useScreen, useScreenStore } from '../../context/screen-context'
import type { ScreenState, Theme } from '../../context/screen-store'
import { Choice } from '../../controls/choice'
import styles from './menus.module.css'

const themes: readonly { readonly value: Theme; readonly label: string }[] = [
  { value: 'system', label: 'system' },
  { value: 'light', label: 'light' },
  { value: 'dark', label: 'dark' },
]

/** What is rare; on a narrow screen, what the header has no room for too. */
export function MoreMenu({ close }: { close: () => void }) {
  const { chain } = useApp()
  const screen = useScreenStore()
  const theme = useScreen((state) => state.theme)
  const projector = useScreen((state) => state.projector)
  const hasTake = useTake(({ take }) => take !== null)
  const redone = useChain(({ future }) => future[0]?.words ?? null)
  const set = (state: Partial<ScreenState>) => () => {
    close()
    screen.setState(state)
  }
  return (
    <span className={styles.entries}>
      <button
        type="button"
        className={styles.narrow}
        data-look="bare"
        disabled={redone === null}
        onClick={() => chain.getState().redo()}
      >
        {redone === null ? 'Redo' : `Redo: ${redone}`}
      </button>
      <button
        type="button"
        className={styles.narrow}
        data-look="bare"
        disabled={!hasTake}
        onClick={set({ sheet: 'trial' })}
      >
        Blind trial
      </button>
      <button type="button" data-look="bare" onClick={set({ projector: !projector })}>
        {projector ? 'Normal view' : 'Projector view'}{' '}
        <kbd className={styles.key}>{printedKey('projector')}</kbd>
      </button>
      <button type="button" data-look="bare" onClick={set({ sheet: 'keys' })}>
        Keys <kbd className={styles.key}>{printedKey('keys')}</kbd>
      </button>
      <button type="button" data-look="bare" onClick={set({ sheet: 'terms' })}>
        Terms
      </button>
      <button type="button" data-look="bare" onClick={set({ careNoteRead: false })}>
        Care for ears
      </button>
      <span className={styles.theme}>
        <Choice
          legend="Theme"
          showsLegend
          value={theme}
          options={themes}
          onChange={(chosen) => screen.setState({ theme: chosen })}
        />
      </span>
    </span>
  )
}
