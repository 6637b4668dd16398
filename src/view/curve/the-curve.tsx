/** The magnitude response of everything linear in the chain, over the spectrum of the take. */
export function TheCurve() {
  return (
    <section aria-label="The curve">
      <h2>The curve</h2>
    </section>
  )
}
