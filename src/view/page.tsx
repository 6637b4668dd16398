import { type ReactNode, useState } from 'react'
import type { App } from '../session/app'
import { TheChain } from './chain/the-chain'
import { AppProvider } from './context/app-context'
import { FilePickers } from './context/file-pickers'
import { ScreenProvider } from './context/screen-context'
import { createScreenStore } from './context/screen-store'
import { TheFigures } from './figures/the-figures'
import { DropAreas } from './files/drop-areas'
import { TheHeader } from './header/the-header'
import { useKeys } from './keys/use-keys'
import { ListeningBar } from './listening/listening-bar'
import { ErrorBoundary } from './notices/error-boundary'
import { Notices } from './notices/notices'
import { PageNotes } from './notices/page-notes'
import styles from './page.module.css'
import { Reach } from './reach'
import { TheResponse } from './response/the-response'
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
  useKeys()
  return (
    <div className={styles.page}>
      <a className={styles.skip} href="#listening">
        Go to Listening
      </a>
      <div className={styles.sheet}>
        <TheHeader />
        <PageNotes />
        <main className={styles.parts}>
          <Part area={styles.take} what="The take">
            <TheTake />
          </Part>
          <Part area={styles.chain} what="The chain">
            <TheChain />
          </Part>
          <Part area={styles.stage} what="The selected stage">
            <SelectedStage />
          </Part>
          <Part area={styles.response} what="The response">
            <TheResponse />
          </Part>
          <Part area={styles.figures} what="The figures">
            <TheFigures />
          </Part>
        </main>
      </div>
      <Reach>
        <Notices />
        <ListeningBar />
      </Reach>
      <Sheets />
    </div>
  )
}

interface PartProps {
  /** Its place on the page. */
  readonly area: string | undefined
  /** What failed, where it fails. */
  readonly what: string
  readonly children: ReactNode
}

/** A part of the page, which fills the room that the page gives it. */
function Part({ area, what, children }: PartProps) {
  return (
    <div className={area}>
      <ErrorBoundary what={what}>{children}</ErrorBoundary>
    </div>
  )
}
