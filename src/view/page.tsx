import { useState } from 'react'
import type { App } from '../session/app'
import { AppProvider } from './app-context'
import { TheChain } from './chain/the-chain'
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
import styles from './page.module.css'
import { Reach } from './reach'
import { ScreenProvider } from './screen-context'
import { createScreenStore } from './screen-store'
import { Sheets } from './sheets'
import { SelectedStage } from './stage/selected-stage'
import { TheTake } from './take/the-take'

/** The whole page, in the order of the work. */
export function Page({ app }: { app: App }) {
  const [screen] = useState(createScreenStore)
  return (
    <AppProvider app={app}>
      <ScreenProvider screen={screen}>
        <ErrorBoundary what="The page">
          <FilePickers>
            <PageContents />
            <DropAreas />
          </FilePickers>
        </ErrorBoundary>
      </ScreenProvider>
    </AppProvider>
  )
}

function PageContents() {
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
            <TheChain />
          </ErrorBoundary>
          <div className={styles.side}>
            <ErrorBoundary what="The stage at hand">
              <SelectedStage />
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
