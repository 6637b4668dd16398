import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../session/lazy-part'
import { deliveryMaking, trialRunning } from '../session/sheet-parts'
import type { SheetName } from './context/screen-store'
import { SheetOnDemand } from './sheet-on-demand'

/** Everything that lies over the page when it is asked for, each fetched by itself. */
export const sheets: Readonly<Record<SheetName, LazyPart<ComponentType>>> = {
  deliver: lazyPart('Delivery', async () => {
    const [{ DeliverSheet }] = await Promise.all([import('./deliver/deliver-sheet'), deliveryMaking.load()])
    return DeliverSheet
  }),
  trial: lazyPart('The blind trial', async () => {
    const [{ TrialSheet }] = await Promise.all([import('./trial/trial-sheet'), trialRunning.load()])
    return TrialSheet
  }),
  terms: lazyPart('The list of terms', async () => (await import('./terms/terms-sheet')).TermsSheet),
  keys: lazyPart('The list of keys', async () => (await import('./keys/keys-sheet')).KeysSheet),
}

/** The sheets, those that are asked for. */
export function Sheets() {
  return (
    <>
      <SheetOnDemand name="deliver" part={sheets.deliver} />
      <SheetOnDemand name="trial" part={sheets.trial} />
      <SheetOnDemand name="terms" part={sheets.terms} />
      <SheetOnDemand name="keys" part={sheets.keys} />
    </>
  )
}
