import { useEffect } from 'react'
import { useScreen, useScreenStore } from '../context/screen-context'
import type { Theme } from '../context/screen-store'
import styles from './header.module.css'

const themes: readonly { readonly value: Theme; readonly label: string }[] = [
  { value: 'system', label: 'system' },
  { value: 'light', label: 'light' },
  { value: 'dark', label: 'dark' },
]

/** Light or dark paper, or whichever the system has. */
export function ThemeChoice() {
  const screen = useScreenStore()
  const theme = useScreen((state) => state.theme)
  useEffect(() => {
    document.documentElement.dataset.theme = theme
  }, [theme])
  const choose = (value: string) => {
    const chosen = themes.find((option) => option.value === value)
    if (chosen) screen.setState({ theme: chosen.value })
  }
  return (
    <label className={styles.theme}>
      Theme
      <select value={theme} onChange={(event) => choose(event.target.value)}>
        {themes.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </label>
  )
}
