/** The controls of the selected stage, beside its picture. */
export function StageAtHand() {
  return (
    <section aria-label="The stage at hand">
      <h2>The stage at hand</h2>
    </section>
  )
}
