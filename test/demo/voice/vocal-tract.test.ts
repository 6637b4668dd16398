import { expect, it } from 'vitest'
import { newTrack, sampleRate } from '../../../src/demo/song/track'
import { shapeByTract } from '../../../src/demo/voice/vocal-tract'

it('is an even tube when it is set to be one', () => {
  // A tube without losses, closed at one end, has the gain 1 / |cos(2 pi f L / c)|: 1 halfway between any two of
  // its resonances (2 n - 1) c / (4 L), however high. Physics of the quarter-wave tube; L = 15 cm, c = 350 m/s.
  const track = (value: number) => newTrack(0.2).fill(value)
  const impulse = new Float64Array(0.2 * sampleRate)
  impulse[0] = 1
  shapeByTract(impulse, {
    formantsHz: [track(583.3), track(1750), track(2916.7)],
    damping: track(1),
    pitchHz: track(100),
  })
  for (let halfway = 1; halfway <= 10; halfway += 1) {
    const frequencyHz = (halfway * 350) / (2 * 0.15)
    let real = 0
    let imaginary = 0
    impulse.forEach((sample, i) => {
      real += sample * Math.cos((2 * Math.PI * frequencyHz * i) / sampleRate)
      imaginary += sample * Math.sin((2 * Math.PI * frequencyHz * i) / sampleRate)
    })
    // 3 dB for the losses, which a mouth has and this formula has not.
    expect(Math.abs(10 * Math.log10(real ** 2 + imaginary ** 2)), `${frequencyHz} Hz`).toBeLessThan(3)
  }
})
