const MINUS = '\u2212'

/** A number with its sign and a true minus: +3.0, 0.0, −4.5. */
export function signed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits)
  if (Number(text) === 0) return text
  return `${value < 0 ? MINUS : '+'}${text}`
}

/** A number with a true minus where it is negative and no plus: 3.0, −4.5. */
export function plain(value: number, digits: number): string {
  return signed(value, digits).replace('+', '')
}

/** {@link plain} for sentences, without zeros at the end: 3, −4.5. */
export function plainInSentence(value: number, digits: number): string {
  return withoutLastZeros(plain(value, digits))
}

/** {@link signed} for sentences, without zeros at the end: +3, 0, −4.5. */
export function signedInSentence(value: number, digits: number): string {
  return withoutLastZeros(signed(value, digits))
}

function withoutLastZeros(text: string): string {
  return text.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '')
}

/** A frequency as people say it: 165 Hz, 3.2 kHz, 12 kHz. */
export function frequency(hz: number): string {
  if (hz < 1000) return `${Math.round(hz)} Hz`
  return `${Number((hz / 1000).toFixed(hz < 10_000 ? 2 : 1))} kHz`
}

/** A ratio as people say it: 4:1, 2.5:1, ∞:1. */
export function ratioText(ratio: number): string {
  return Number.isFinite(ratio) ? `${Number(ratio.toFixed(1))}:1` : '∞:1'
}
