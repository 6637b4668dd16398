/** A fair bit from the browser's own source of cryptographic randomness. */
export function randomBit(): boolean {
  const [byte = 0] = crypto.getRandomValues(new Uint8Array(1))
  return byte % 2 === 1
}
