import type { App } from '../session/app'
import type { LazyPart } from '../session/lazy-part'
import { fileReading, stageReading, wavWriting } from '../session/parts'
import { deliveryMaking, trialRunning } from '../session/sheet-parts'
import { cardFigures, chainTools, endFigures, listeningPoint } from './chain/lazy-parts'
import { figuresTable } from './figures/the-figures'
import { moreMenu, takeMenu } from './header/the-header'
import { barParts } from './listening/bar-parts'
import { responsePlot } from './response/the-response'
import { sheets } from './sheets'
import { stagePictures } from './stage/lazy-stage-picture'
import { stageMenu } from './stage/stage-menu'
import { takeLanes } from './take/the-take'

/** All that is fetched later, what is likely to be wanted first at the beginning. */
const parts: readonly LazyPart<unknown>[] = [
  takeLanes,
  responsePlot,
  figuresTable,
  // The others of the bar come in the same file.
  barParts.barNotes,
  cardFigures,
  listeningPoint,
  chainTools,
  stagePictures,
  endFigures,
  fileReading,
  deliveryMaking,
  sheets.deliver,
  trialRunning,
  sheets.trial,
  wavWriting,
  stageReading,
  takeMenu,
  stageMenu,
  moreMenu,
  sheets.keys,
  sheets.terms,
]

/** Longest wait for an idle moment, ms. */
const IDLE_WITHIN_MS = 5000

/**
 * Fetches the later parts of the page, one at a time in idle moments, once there is a take: nobody waits for them then,
 * and they do not stand in the way of what comes first. What fails is asked for again when it is wanted.
 */
export function prefetchParts({ take }: Pick<App, 'take'>): void {
  const stop = take.subscribe(({ take: opened }) => {
    if (!opened) return
    stop()
    void prefetchAll()
  })
}

async function prefetchAll(): Promise<void> {
  for (const part of parts) {
    await idle()
    await part.load().catch(() => undefined)
  }
}

function idle(): Promise<void> {
  return new Promise((resolve) => {
    // WebKit has no idle callbacks yet.
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: IDLE_WITHIN_MS })
    else setTimeout(resolve, IDLE_WITHIN_MS / 10)
  })
}
