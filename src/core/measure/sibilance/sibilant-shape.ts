import { powerToDb } from '../../sound/decibels'
import type { ShortSpectra } from '../spectrum/short-spectra'

/** How the spectrum of a hiss is shaped. */
export interface HissShape {
  /** The strongest third of an octave from 2.5 kHz up against the weaker of the octaves 0.5 to 1 and 1 to 2 kHz, dB per Hz. */
  readonly prominenceDb: number
  /** Second central moment of the spectrum from 300 Hz up, kHz squared. */
  readonly varianceKhz2: number
}

/** The paper sampled at 22 kHz, so neither its moments nor its peaks know what lies higher. */
const HIGHEST_HZ = 11_000
/** Below this is voicing that goes on into the hiss. Chosen, no source. */
const LOWEST_HZ = 300
/** Where peaks are looked for: from below /sh/ (3820 Hz on average), in steps of a sixth of an octave. */
const LOWEST_PEAK_HZ = 2500
const PEAK_STEP = 2 ** (1 / 6)
/** Moments looked at in a hiss, spread evenly over it: more would not change its average. */
const MOST_MOMENTS = 40
/**
 * The prominence that a sibilant has for each kHz squared of variance: of /s/ (2.92) 7.3 dB is asked, of /f/ (6.37) 15.9.
 * Fitted to recorded letters, digits and words of eight voices in four languages, no source: sibilants have 2.6 and more
 * (most 6 to 40), of F, V and TH louder than 30 dB below the vowel none has more than 2.2.
 */
const PROMINENCE_FOR_VARIANCE = 2.5

/**
 * Whether a hiss is shaped like /s/, /z/, /sh/ or the end of an affricate, not like /f/ or /th/: energy gathered around
 * a peak that stands high above 0.5 to 2 kHz, instead of spread over the whole spectrum.
 *
 * Source: A. Jongman, R. Wayland, S. Wong, "Acoustic characteristics of English fricatives", JASA 108(3), 2000: variance
 * 2.92 (/s, z/) and 3.38 (/sh, zh/) against 6.37 (/f, v/) and 6.19 (/th, dh/) MHz, peaks at 6839 and 3820 Hz against none
 * that stands out. How both are put together is our own.
 */
export function isSibilantShape({ prominenceDb, varianceKhz2 }: HissShape): boolean {
  return prominenceDb >= PROMINENCE_FOR_VARIANCE * varianceKhz2
}

/** Shape of the average spectrum of the moments [from, to) of a sound. */
export function hissShape(spectra: ShortSpectra, from: number, to: number): HissShape {
  const average = averagePowers(spectra, from, to)
  const { binHz } = spectra
  const topHz = Math.min(HIGHEST_HZ, (average.length - 1) * binHz)
  let peak = 0
  for (let hz = LOWEST_PEAK_HZ; hz * PEAK_STEP <= topHz; hz *= PEAK_STEP) {
    peak = Math.max(peak, density(average, hz / PEAK_STEP / binHz, (hz * PEAK_STEP) / binHz))
  }
  const low = Math.min(
    density(average, 500 / binHz, 1000 / binHz),
    density(average, 1000 / binHz, 2000 / binHz),
  )
  return {
    prominenceDb: low > 0 ? powerToDb(peak / low) : Number.POSITIVE_INFINITY,
    varianceKhz2: variance(average, LOWEST_HZ / binHz, topHz / binHz) * (binHz / 1000) ** 2,
  }
}

function averagePowers(spectra: ShortSpectra, from: number, to: number): Float64Array {
  const moments = Math.min(MOST_MOMENTS, to - from)
  const average = new Float64Array(spectra.binCount)
  for (let i = 0; i < moments; i++) {
    const powers = spectra.powersAt(from + Math.floor(((i + 0.5) * (to - from)) / moments))
    for (let bin = 0; bin < average.length; bin++) {
      average[bin] = (average[bin] ?? 0) + (powers[bin] ?? 0) / moments
    }
  }
  return average
}

/** Mean power of the bins nearest to [from, to). */
function density(powers: Float64Array, from: number, to: number): number {
  const first = Math.round(from)
  const end = Math.max(first + 1, Math.round(to))
  let sum = 0
  for (let bin = first; bin < end; bin++) sum += powers[bin] ?? 0
  return sum / (end - first)
}

/** Second central moment of the powers over their bins, in bins squared; 0 of nothing. */
function variance(powers: Float64Array, from: number, to: number): number {
  let [weight, first, second] = [0, 0, 0]
  for (let bin = Math.ceil(from); bin <= to; bin++) {
    const power = powers[bin] ?? 0
    weight += power
    first += power * bin
    second += power * bin * bin
  }
  return weight > 0 ? second / weight - (first / weight) ** 2 : 0
}
