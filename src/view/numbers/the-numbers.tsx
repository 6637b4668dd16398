/** The figures without, with, and the difference. */
export function TheNumbers() {
  return (
    <section aria-label="The numbers">
      <h2>The numbers</h2>
    </section>
  )
}
