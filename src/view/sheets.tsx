import { lazy } from 'react'
import { SheetOnDemand } from './sheet-on-demand'

const DeliverSheet = lazy(async () => ({ default: (await import('./deliver/deliver-sheet')).DeliverSheet }))
const KeysSheet = lazy(async () => ({ default: (await import('./keys/keys-sheet')).KeysSheet }))
const TermsSheet = lazy(async () => ({ default: (await import('./terms/terms-sheet')).TermsSheet }))
const TrialSheet = lazy(async () => ({ default: (await import('./trial/trial-sheet')).TrialSheet }))

/** Everything that lies over the page when it is asked for. */
export function Sheets() {
  return (
    <>
      <SheetOnDemand name="deliver">
        <DeliverSheet />
      </SheetOnDemand>
      <SheetOnDemand name="trial">
        <TrialSheet />
      </SheetOnDemand>
      <SheetOnDemand name="terms">
        <TermsSheet />
      </SheetOnDemand>
      <SheetOnDemand name="keys">
        <KeysSheet />
      </SheetOnDemand>
    </>
  )
}
