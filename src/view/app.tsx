import { useState } from 'react'
import type { Bench } from '../session/bench'
import styles from './app.module.css'
import { BenchProvider } from './bench-context'
import { TheCurve } from './curve/the-curve'
import { DropAreas } from './files/drop-areas'
import { FilePickers } from './files/file-pickers'
import { TheHeader } from './header/the-header'
import { PageKeys } from './keys/page-keys'
import { ListeningBar } from './listening/listening-bar'
import { ErrorBoundary } from './notices/error-boundary'
import { Notices } from './notices/notices'
import { PageNotes } from './notices/page-notes'
import { TheNumbers } from './numbers/the-numbers'
import { ThePath } from './path/the-path'
import { Reach } from './reach'
import { ScreenProvider } from './screen-context'
import { createScreenStore } from './screen-store'
import { Sheets } from './sheets'
import { StageAtHand } from './stage/stage-at-hand'
import { TheTake } from './take/the-take'

/** The whole page, in the order of the work. */
export function App({ bench }: { bench: Bench }) {
  const [screen] = useState(createScreenStore)
  return (
    <BenchProvider bench={bench}>
      <ScreenProvider screen={screen}>
        <ErrorBoundary what="The page">
          <FilePickers>
            <Page />
            <DropAreas />
          </FilePickers>
        </ErrorBoundary>
      </ScreenProvider>
    </BenchProvider>
  )
}

function Page() {
  return (
    <div className={styles.page}>
      <a className={styles.skip} href="#listening">
        Go to Listening
      </a>
      <div className={styles.sheet}>
        <TheHeader />
        <PageNotes />
        <main className={styles.parts}>
          <ErrorBoundary what="The take">
            <TheTake />
          </ErrorBoundary>
          <ErrorBoundary what="The path">
            <ThePath />
          </ErrorBoundary>
          <div className={styles.side}>
            <ErrorBoundary what="The stage at hand">
              <StageAtHand />
            </ErrorBoundary>
            <ErrorBoundary what="The curve">
              <TheCurve />
            </ErrorBoundary>
            <ErrorBoundary what="The numbers">
              <TheNumbers />
            </ErrorBoundary>
          </div>
        </main>
      </div>
      <Reach>
        <Notices />
        <ListeningBar />
      </Reach>
      <Sheets />
      <PageKeys />
    </div>
  )
}
