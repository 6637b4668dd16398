import { type ReactNode, useLayoutEffect, useRef } from 'react'
import styles from './reach.module.css'

/**
 * Stands at the lower edge of the window, always in reach. The page knows its height, as --reach: room is kept for it
 * at the end, and what takes the focus is scrolled clear of it.
 */
export function Reach({ children }: { children: ReactNode }) {
  const bar = useRef<HTMLElement>(null)
  useLayoutEffect(() => {
    const observed = bar.current
    if (!observed) return
    const tell = () =>
      document.documentElement.style.setProperty('--reach', `${observed.getBoundingClientRect().height}px`)
    tell()
    const observer = new ResizeObserver(tell)
    observer.observe(observed)
    return () => observer.disconnect()
  }, [])
  return (
    <footer ref={bar} className={styles.reach}>
      <div className={styles.bar}>{children}</div>
    </footer>
  )
}
