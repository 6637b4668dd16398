/**
 * Amplitudes of harmonics 0 to `count` of `curve(amplitude * sin(t))`, by numerical integration over one period
 * (the rectangle rule, which for a smooth periodic function is exact to the last digits). Harmonic 0 is the mean.
 */
export function harmonicAmplitudes(curve: (x: number) => number, amplitude: number, count: number): number[] {
  const points = 16_384
  const values = Array.from({ length: points }, (_, i) =>
    curve(amplitude * Math.sin((2 * Math.PI * (i + 0.5)) / points)),
  )
  return Array.from({ length: count + 1 }, (_, k) => {
    let re = 0
    let im = 0
    values.forEach((value, i) => {
      const angle = (2 * Math.PI * k * (i + 0.5)) / points
      re += value * Math.cos(angle)
      im += value * Math.sin(angle)
    })
    return ((k === 0 ? 1 : 2) * Math.hypot(re, im)) / points
  })
}
