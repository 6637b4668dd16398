import { Sheet } from '../dialog/sheet'
import { termGroups } from './terms'
import styles from './terms.module.css'

/** The words of the screen, each with what it means here. */
export function TermsSheet() {
  return (
    <Sheet name="terms" title="Terms">
      {termGroups.map(({ title, terms }) => (
        <section key={title} className={styles.group}>
          <h3 className={styles.title}>{title}</h3>
          <dl>
            {terms.map(([term, meaning]) => (
              <div key={term} className={styles.entry}>
                <dt>{term}</dt>
                <dd>{meaning}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Sheet>
  )
}
