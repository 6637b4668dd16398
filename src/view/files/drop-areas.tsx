import type { DragEvent } from 'react'
import { useApp, useTake } from '../context/app-context'
import { assignFiles, type FileRole } from '../context/assign-files'
import styles from './drop-areas.module.css'
import { useFileDrag } from './use-file-drag'

/** Two areas over the whole page, there only while files are dragged over it. */
export function DropAreas() {
  const { takes } = useApp()
  const hasTake = useTake(({ take }) => take !== null)
  const dragging = useFileDrag()
  if (!dragging) return null

  const drop = (role: FileRole) => (event: DragEvent) =>
    void takes.openTogether(assignFiles([...event.dataTransfer.files], role))
  return (
    <div className={styles.cover}>
      <div className={styles.areas}>
        <section className={styles.area} aria-label="Drop the take here" onDrop={drop('take')}>
          <p className={styles.what}>Take</p>
          <p>The lead vocal. With a second file, that one is the backing.</p>
        </section>
        {hasTake && (
          <section className={styles.area} aria-label="Drop the backing here" onDrop={drop('backing')}>
            <p className={styles.what}>Backing</p>
            <p>What the voice has to be heard over.</p>
          </section>
        )}
      </div>
      <p className={styles.promise}>Your audio never leaves this computer.</p>
    </div>
  )
}
