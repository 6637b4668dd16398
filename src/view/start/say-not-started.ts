import './not-started.css'

/** Says on a page that was not drawn why not, in place of what its HTML says. */
export function sayNotStarted(root: HTMLElement, why: string): void {
  const place = root.querySelector('.not-started')
  const words = place?.querySelector('p')
  if (!place || !words) return
  place.classList.add('known')
  words.textContent = why
}
