import { HeardChoice } from './heard-choice'
import { ScopeChoice } from './scope-choice'

/** What is compared, and how it is heard. */
export function Choices() {
  return (
    <>
      <ScopeChoice />
      <HeardChoice />
    </>
  )
}
