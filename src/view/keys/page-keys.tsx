import { useKeys } from './use-keys'

/** Lets keys work anywhere on the page. */
export function PageKeys() {
  useKeys()
  return null
}
