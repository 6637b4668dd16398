import { memo } from 'react'
import {
  discardSnapshot,
  restoreSnapshot,
  snapshotNames,
  snapshotWords,
  storeSnapshot,
} from '../../session/chain/snapshots'
import { useApp, useChain } from '../context/app-context'
import { Menu } from '../controls/menu'
import { MenuEntry } from './menu-entry'

interface Entry {
  readonly label: string
  readonly purpose: string
  readonly said: string
  act(): void
}

/** Stores the current chain, to compare it with another later or to go back to it. */
export const VersionsMenu = memo(({ announce }: { announce(text: string): void }) => {
  const { chain, comparing } = useApp()
  const snapshots = useChain((state) => state.snapshots)
  const { editVersions } = chain.getState()
  const stored = snapshotNames.filter((name) => snapshots[name] !== null)
  const entries: Entry[] = [
    ...snapshotNames.map((name) => ({
      label: `Store as ${snapshotWords[name]}`,
      purpose: snapshots[name] ? `Replaces ${snapshotWords[name]}.` : 'The current chain.',
      said: `Stored as ${snapshotWords[name]}`,
      act: () => editVersions(storeSnapshot(name)),
    })),
    ...(stored[0]
      ? [
          {
            label: stored[1] ? 'Compare A with B' : `Compare ${snapshotWords[stored[0]]} with now`,
            purpose: 'At matched loudness, like every comparison.',
            said: 'Comparing stored versions',
            act: () => comparing.compare('snapshots'),
          },
        ]
      : []),
    ...stored.map((name) => ({
      label: `Go back to ${snapshotWords[name]}`,
      purpose: 'Replaces the current chain. Can be undone.',
      said: `Back to ${snapshotWords[name]}`,
      act: () => editVersions(restoreSnapshot(name)),
    })),
    ...stored.map((name) => ({
      label: `Discard ${snapshotWords[name]}`,
      purpose: 'Removes the stored version. The current chain is unchanged. Can be undone.',
      said: `Discarded ${snapshotWords[name]}`,
      act: () => editVersions(discardSnapshot(name)),
    })),
  ]
  return (
    <Menu label="Store version">
      {(close) =>
        entries.map(({ label, purpose, said, act }) => (
          <MenuEntry
            key={label}
            label={label}
            purpose={purpose}
            onChoose={() => {
              act()
              announce(said)
              close()
            }}
          />
        ))
      }
    </Menu>
  )
})
