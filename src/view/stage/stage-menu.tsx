import type { ComponentProps, ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { Menu } from '../controls/menu'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import styles from './stage-menu.module.css'
import type { StageMenuEntries, StageMenuProps } from './stage-menu-entries'

/** What the menu of the selected stage holds. */
export const stageMenu: LazyPart<ComponentType<ComponentProps<typeof StageMenuEntries>>> = lazyPart(
  'The menu of the stage',
  async () => (await import('./stage-menu-entries')).StageMenuEntries,
)

/** Opens what can be done with the selected stage as a whole. */
export function StageMenu(props: StageMenuProps) {
  return (
    <span className={styles.menu}>
      <Menu label="Stage">
        {(close) => <LazyView part={stageMenu} props={{ ...props, close }} failed={FailedPart} />}
      </Menu>
    </span>
  )
}
