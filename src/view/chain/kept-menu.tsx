import { memo } from 'react'
import { useStore } from 'zustand'
import { type KeptName, keptWords } from '../../session/comparison/snapshots'
import { useApp } from '../app-context'
import { Menu } from '../fields/menu'
import styles from './add-stage.module.css'
import { discardKept } from './discard-kept'

interface Entry {
  readonly label: string
  readonly purpose: string
  readonly said: string
  act(): void
}

const names: readonly KeptName[] = ['a', 'b']

/** Keeps the chain as it is, to compare it with another later or to go back to it. */
export const KeptMenu = memo(({ announce }: { announce(text: string): void }) => {
  const app = useApp()
  const { kept, keptVersions } = app
  const state = useStore(kept)
  const both = state.a !== null && state.b !== null
  const entries: Entry[] = [
    ...names.map((name) => ({
      label: `Keep as ${name.toUpperCase()}`,
      purpose: state[name] ? `In place of ${keptWords[name]}.` : 'The chain as it is now.',
      said: `The chain is now that of ${keptWords[name]}`,
      act: () => keptVersions.keep(name),
    })),
    ...(state.a || state.b
      ? [
          {
            label: both ? 'Compare A with B' : `Compare ${state.a ? 'A' : 'B'} with now`,
            purpose: 'Equally loud, as everything that is compared.',
            said: 'Kept versions are compared',
            act: () => keptVersions.compare(),
          },
        ]
      : []),
    ...names
      .filter((name) => state[name] !== null)
      .map((name) => ({
        label: `Back to ${name.toUpperCase()}`,
        purpose: 'On the bench again. Can be undone.',
        said: `Back to ${keptWords[name]}`,
        act: () => keptVersions.bringBack(name),
      })),
    ...names
      .filter((name) => state[name] !== null)
      .map((name) => ({
        label: `Discard ${name.toUpperCase()}`,
        purpose: 'No longer kept. The chain on the bench stays.',
        said: `No longer kept: ${name.toUpperCase()}`,
        act: () => discardKept(app, name),
      })),
  ]
  return (
    <Menu label="Keep this version">
      {(close) =>
        entries.map(({ label, purpose, said, act }) => (
          <button
            key={label}
            type="button"
            className={styles.kind}
            onClick={() => {
              act()
              announce(said)
              close()
            }}
          >
            <span className={styles.label}>{label}</span>
            <span className={styles.purpose}>{purpose}</span>
          </button>
        ))
      }
    </Menu>
  )
})
