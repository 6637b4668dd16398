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

/** Stores the chain as it is now, to compare it with another version later or to go back to it. */
export const KeptMenu = memo(({ announce }: { announce(text: string): void }) => {
  const { chain, comparing } = useApp()
  const snapshots = useChain((state) => state.snapshots)
  const { editVersions } = chain.getState()
  const stored = snapshotNames.filter((name) => snapshots[name] !== null)
  const entries: Entry[] = [
    ...snapshotNames.map((name) => ({
      label: `Store as ${snapshotWords[name]}`,
      purpose: snapshots[name] ? `Replaces ${snapshotWords[name]}.` : 'The chain as it is now.',
      said: `Stored as ${snapshotWords[name]}`,
      act: () => editVersions(storeSnapshot(name)),
    })),
    ...(stored[0]
      ? [
          {
            label: stored[1] ? 'Compare A with B' : `Compare ${snapshotWords[stored[0]]} with now`,
            purpose: 'At the same loudness, like every comparison.',
            said: 'Comparing stored versions',
            act: () => comparing.compare('snapshots'),
          },
        ]
      : []),
    ...stored.map((name) => ({
      label: `Back to ${snapshotWords[name]}`,
      purpose: 'Restores this version. You can undo it.',
      said: `Back to ${snapshotWords[name]}`,
      act: () => editVersions(restoreSnapshot(name)),
    })),
    ...stored.map((name) => ({
      label: `Discard ${snapshotWords[name]}`,
      purpose: 'The current chain does not change. You can undo it.',
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
