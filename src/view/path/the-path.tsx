/** The chain as an ordered list, from the take to the way out. */
export function ThePath() {
  return (
    <section aria-label="The path">
      <h2>The path</h2>
    </section>
  )
}
