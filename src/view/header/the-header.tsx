import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useTake } from '../context/app-context'
import { useScreen, useScreenStore } from '../context/screen-context'
import { Menu } from '../controls/menu'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import styles from './header.module.css'
import { TakeFacts } from './take-facts'
import { UndoButtons } from './undo-buttons'
import { useLookOfPage } from './use-look-of-page'

interface MenuContentProps {
  close(): void
}

/** What the two menus of the header hold. */
export const takeMenu: LazyPart<ComponentType<MenuContentProps>> = lazyPart(
  'The menu of the take',
  async () => (await import('./menus/take-menu')).TakeMenu,
)
export const moreMenu: LazyPart<ComponentType<MenuContentProps>> = lazyPart(
  'The menu',
  async () => (await import('./menus/more-menu')).MoreMenu,
)

/** The open take with its facts, what was changed last, and what can be done with it all. */
export function TheHeader() {
  useLookOfPage()
  const screen = useScreenStore()
  const projector = useScreen((state) => state.projector)
  const name = useTake(({ take }) => take?.name ?? null)
  return (
    <header className={styles.header}>
      <h1 className={styles.name}>Evenhand</h1>
      <div className={styles.take}>
        <Menu label={name ?? 'Open a take'} name={name === null ? undefined : `Take: ${name}`} align="start">
          {(close) => <LazyView part={takeMenu} props={{ close }} failed={FailedPart} />}
        </Menu>
      </div>
      <TakeFacts />
      <nav className={styles.actions} aria-label="Main">
        <UndoButtons />
        <button
          type="button"
          className={styles.trial}
          data-look="bare"
          disabled={name === null}
          onClick={() => screen.setState({ sheet: 'trial' })}
        >
          Blind trial
        </button>
        <Menu label="More">
          {(close) => <LazyView part={moreMenu} props={{ close }} failed={FailedPart} />}
        </Menu>
        {projector ? (
          <button type="button" onClick={() => screen.setState({ projector: false })}>
            Leave projector
          </button>
        ) : (
          <button
            type="button"
            className={styles.deliver}
            data-look="solid"
            disabled={name === null}
            onClick={() => screen.setState({ sheet: 'deliver' })}
          >
            Deliver
          </button>
        )}
      </nav>
    </header>
  )
}
