import { bandParameters, type NumberParameter, printNumber, type Unit } from '../../core'

/** A number that was understood, or what to say where it was not. */
export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string }

/** What may stand behind a number, and what it is worth in the parameter's unit. */
const SUFFIXES: Readonly<Record<Exclude<Unit, 'ratio'>, Readonly<Record<string, number>>>> = {
  Hz: { '': 1, hz: 1, k: 1000, khz: 1000 },
  dB: { '': 1, db: 1 },
  dBFS: { '': 1, db: 1, dbfs: 1 },
  ms: { '': 1, ms: 1, s: 1000, us: 0.001, µs: 0.001 },
  '%': { '': 1, '%': 1 },
  '': { '': 1 },
}

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*([a-zµ%]*)$/
const RATIO = /^(\d+\.?\d*|\.\d+)(?:\s*(?::|to)\s*(\d+\.?\d*|\.\d+))?$/
const INFINITE = /^(?:1\s*(?::|to)\s*)?(?:inf|infinity|infinite|∞)(?:\s*(?::|to)\s*1)?$/
const OCTAVES = /^(\d+\.?\d*|\.\d+)(?:\s*\/\s*(\d+\.?\d*))?\s*oct(?:ave|aves)?$/

/** What is written with thousands; the numbers of all other units are smaller. */
const THOUSANDS: ReadonlySet<Unit> = new Set(['Hz', 'ms', 'ratio'])

/** A comma that may separate thousands as well as decimals: neither that of "2,5" nor those of "0,125" and "2,500k". */
const EITHER_COMMA = /(?<![\d.,])[1-9]\d{0,2},\d{3}(?![\d.,]|\s*[ks])/

/**
 * What a person typed, in the parameter's unit: "3k", "3.2 kHz", "-19,3", "20:1", "1:20", "inf", "0.5 ms", "50 %",
 * and a Q as a bandwidth, "1/2 oct". Decimal commas and true minus signs are taken as meant, but for a
 * comma that may as well separate thousands, "12,000": that is refused. The unit may be left out. Values outside the range are not brought into it, for that would be a setting nobody asked for.
 */
export function parseNumber(parameter: NumberParameter, text: string): Parsed {
  const typed = text.trim().toLowerCase().replace(/[−–‒]/g, '-')
  const plain = typed.replace(',', '.')
  if (parameter.minMeans !== undefined && plain === parameter.minMeans)
    return { ok: true, value: parameter.min }
  const value = quantity(parameter, plain)
  if (value === null) return { ok: false, message: `Not understood. Type ${allowed(parameter)}.` }
  if (THOUSANDS.has(parameter.unit) && EITHER_COMMA.test(typed)) {
    const thousands = quantity(parameter, typed.replace(',', ''))
    if (thousands !== null) return { ok: false, message: eitherOf(parameter, typed, thousands, value) }
  }
  if (value < parameter.min || value > parameter.max)
    return { ok: false, message: `Out of range. Type ${allowed(parameter)}.` }
  return { ok: true, value }
}

/**
 * Whether a key, pressed on a field whose text is its value, begins to type another one: a digit, sign, point or comma,
 * or the first letter of a word that stands for one, "off" or "inf". All other keys are the page's.
 */
export function beginsNumber({ unit, minMeans }: NumberParameter, key: string): boolean {
  const letter = key.toLowerCase()
  return (
    /^[\d+\-−–‒.,]$/.test(key) ||
    letter === minMeans?.charAt(0) ||
    (unit === 'ratio' && /^[i∞]$/.test(letter))
  )
}

/** The range of a parameter in words: "−80.0 dBFS to 0.0 dBFS". */
function allowed(parameter: NumberParameter): string {
  const { min, max, minMeans } = parameter
  const low = minMeans === undefined ? printNumber(parameter, min) : `${minMeans}, or up`
  return max === Number.POSITIVE_INFINITY
    ? `${low} and up, or inf`
    : `${low} to ${printNumber(parameter, max)}`
}

/** Both readings of an ambiguous comma, and how to type each. */
function eitherOf({ unit }: NumberParameter, typed: string, thousands: number, decimals: number): string {
  const behind = unit === 'ratio' ? ':1' : ` ${unit}`
  const unambiguous = Number.isInteger(decimals) ? decimals.toFixed(1) : decimals
  return `${typed} can mean ${thousands}${behind} or ${decimals}${behind}. Type ${thousands} or ${unambiguous}.`
}

function quantity(parameter: NumberParameter, plain: string): number | null {
  if (parameter.unit === 'ratio') return ratio(plain)
  if (parameter === bandParameters.q) {
    const octaves = fraction(OCTAVES.exec(plain))
    if (octaves !== null) return qOfOctaves(octaves)
  }
  const [, digits, suffix] = NUMBER.exec(plain) ?? []
  if (digits === undefined || suffix === undefined) return null
  const worth = new Map(Object.entries(SUFFIXES[parameter.unit])).get(suffix)
  return worth === undefined ? null : (Number(digits) * worth) / (parameter.displayFactor ?? 1)
}

/** n:1 and 1:n mean the same: which side is the input differs from writer to writer. */
function ratio(plain: string): number | null {
  if (INFINITE.test(plain)) return Number.POSITIVE_INFINITY
  const quotient = fraction(RATIO.exec(plain))
  if (quotient === null || quotient === 0) return null
  return plain.startsWith('1') && quotient < 1 ? 1 / quotient : quotient
}

function fraction(match: RegExpExecArray | null): number | null {
  if (!match) return null
  const value = Number(match[1]) / Number(match[2] ?? 1)
  return Number.isFinite(value) ? value : null
}

/**
 * The Q of a bell whose bandwidth is so many octaves: sqrt(2^N) / (2^N - 1).
 * Source: R. Bristow-Johnson, "Cookbook formulae for audio equalizer biquad filter coefficients", where it reads
 * 1/Q = 2 sinh(ln(2)/2 N).
 */
function qOfOctaves(octaves: number): number {
  return Math.sqrt(2 ** octaves) / (2 ** octaves - 1)
}
