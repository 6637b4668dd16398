import { type FormEvent, useState } from 'react'
import type { Snapshot } from '../../../core'
import { nameSnapshot } from '../../../session/chain/name-snapshot'
import {
  discardSnapshot,
  MAX_SNAPSHOT_NAME,
  restoreSnapshot,
  type SnapshotKey,
  snapshotLetters,
  snapshotWords,
  storeSnapshot,
} from '../../../session/chain/snapshots'
import { useApp } from '../../context/app-context'
import { Menu } from '../../controls/menu'
import { MenuEntry } from '../../controls/menu-entry'
import styles from './version-menu.module.css'

interface VersionMenuProps {
  /** Which of the stored versions, and what is stored there. */
  readonly of: SnapshotKey
  readonly stored: Snapshot
  announce(text: string): void
}

/** What can be done with a stored version besides comparing it. */
export function VersionMenu(props: VersionMenuProps) {
  return (
    <Menu label="" name={`Version ${snapshotLetters[props.of]}`}>
      {(close) => <Entries {...props} close={close} />}
    </Menu>
  )
}

function Entries({ of: key, stored, announce, close }: VersionMenuProps & { close(): void }) {
  const { editVersions } = useApp().chain.getState()
  const [name, setName] = useState(stored.name)
  const letter = snapshotLetters[key]
  const words = snapshotWords(key, stored)
  const done = (said: string) => {
    announce(said)
    close()
  }
  const rename = (event: FormEvent) => {
    event.preventDefault()
    editVersions(nameSnapshot(key, name))
    done(name.trim() ? `${letter} is called ${name}` : `${letter} has no name`)
  }
  return (
    <>
      <form className={styles.naming} onSubmit={rename}>
        <label>
          Name of {letter}
          <input
            type="text"
            dir="auto"
            maxLength={MAX_SNAPSHOT_NAME}
            value={name}
            onChange={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <button type="submit">Rename</button>
      </form>
      <MenuEntry
        label={`Go back to ${words}`}
        purpose="Replaces the current chain. Can be undone."
        onChoose={() => {
          editVersions(restoreSnapshot(key))
          done(`Back to ${words}`)
        }}
      />
      <MenuEntry
        label={`Replace ${words}`}
        purpose="Stores the current chain in its place."
        onChoose={() => {
          editVersions(storeSnapshot(key))
          done(`Replaced ${words}`)
        }}
      />
      <MenuEntry
        label={`Discard ${words}`}
        purpose="The current chain is unchanged. Can be undone."
        onChoose={() => {
          editVersions(discardSnapshot(key))
          done(`Discarded ${words}`)
        }}
      />
    </>
  )
}
