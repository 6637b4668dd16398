import type { Point } from './drive/engine'

/** An element of the page: a selector and, where that is not enough, how its name or text begins. */
export interface Target {
  readonly selector: string
  readonly begins?: string
}

/** What the page shows that changes as it works. */
export interface Shown {
  /** All figures of the table, in one. */
  readonly figures: string
  /** Whether there are figures, and nothing better is being worked out. */
  readonly isSettled: boolean
  readonly playing: boolean
  /** As the field prints it. */
  readonly position: string
  /** Peak at the output in words; null while none is shown. */
  readonly level: string | null
  /** What the header says, the name of the take among it. */
  readonly header: string
  /** What is said to have gone wrong. */
  readonly alerts: readonly string[]
  /** What else is said about what happened. */
  readonly statuses: readonly string[]
}

declare global {
  interface Window {
    /** Put there by `installLook`. */
    benchLook?: {
      find(target: Target): HTMLElement | null
      shown(): Shown
    }
    /** WAV files the page has saved, instead of the browser. */
    savedFiles?: Blob[]
  }
}

/** Gives the page under test what is asked of it again and again. Runs in the page. */
export function installLook(): void {
  const wordsOf = (element: Element) =>
    (element.getAttribute('aria-label') ?? element.textContent ?? '').trim()
  const all = (selector: string) => [...document.querySelectorAll<HTMLElement>(selector)]
  const find = ({ selector, begins = '' }: Target) =>
    all(selector).find((element) => wordsOf(element).startsWith(begins)) ?? null
  const said = (role: string) =>
    all(`[role="${role}"]`)
      .map((element) => element.textContent?.trim() ?? '')
      .filter((words) => words !== '')
  window.benchLook = {
    find,
    shown: () => {
      const rows = [...document.querySelectorAll('tr')]
      const row = rows.find((line) => line.textContent?.startsWith('Integrated'))
      const table = row?.closest('table')
      return {
        figures: table?.tBodies[0]?.textContent ?? '',
        isSettled: /\d/.test(row?.cells[1]?.textContent ?? '') && table?.ariaBusy !== 'true',
        playing: find({ selector: 'button', begins: 'Stop' }) !== null,
        position:
          all('span').find((span) => /^\d+:\d\d\.\d$/.test(span.textContent ?? ''))?.textContent ?? '',
        level:
          all('span').find((span) => /^[−-]?[\d.]+ dBFS\b/.test(span.textContent ?? ''))?.textContent ?? null,
        header: document.querySelector('header')?.textContent ?? '',
        alerts: said('alert'),
        statuses: said('status'),
      }
    },
  }
}

/** Keeps from now on what the page saves, and has the browser save nothing. Runs in the page. */
export function keepSavedFiles(): void {
  const saved: Blob[] = []
  window.savedFiles = saved
  const create = URL.createObjectURL
  URL.createObjectURL = (source) => {
    if (source instanceof Blob) saved.push(source)
    return create(source)
  }
  const click = HTMLAnchorElement.prototype.click
  HTMLAnchorElement.prototype.click = function () {
    if (!this.download) click.call(this)
  }
}

/** The file saved last, in base 64. Runs in the page. */
export async function takeSavedFile(): Promise<string | null> {
  const file = window.savedFiles?.pop()
  if (!file) return null
  const reader = new FileReader()
  await new Promise<void>((resolve, reject) => {
    reader.onload = () => resolve()
    reader.onerror = () => reject(reader.error)
    reader.readAsDataURL(file)
  })
  return String(reader.result).replace(/^[^,]*,/, '')
}

/** Where a target stands, `along` it from 0, left, to 1; it is brought into view. Runs in the page. */
export async function placeOf(target: Target & { readonly along: number }): Promise<Point | null> {
  const element = window.benchLook?.find(target)
  if (!element) return null
  element.scrollIntoView({ block: 'center' })
  await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)))
  const { left, top, width, height } = element.getBoundingClientRect()
  return { x: Math.round(left + width * target.along), y: Math.round(top + height / 2) }
}
