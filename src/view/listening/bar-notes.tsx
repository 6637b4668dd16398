import { NothingToCompare } from './nothing-to-compare'
import { UnheardChange } from './unheard-change'

/** What there is to say about what is compared and heard, with the one change that helps. */
export function BarNotes() {
  return (
    <>
      <NothingToCompare />
      <UnheardChange />
    </>
  )
}
