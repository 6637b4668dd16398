type Term = readonly [term: string, meaning: string]

/** Terms that belong together. */
export interface TermGroup {
  readonly title: string
  readonly terms: readonly Term[]
}

/** The terms that the screen uses: the trade's, those of the standards, and a few of our own. */
export const termGroups: readonly TermGroup[] = [
  {
    title: 'The comparison',
    terms: [
      ['Take', 'The recording you work on: one lead vocal.'],
      ['Backing', 'What the voice has to be heard over.'],
      ['Chain', 'The stages, in the order in which the sound passes through them.'],
      ['Stage', 'One step of the chain: an equaliser, a compressor, a saturator, a de-esser or a gain.'],
      ['Bypass', 'To pass the sound around a stage, so that it stays unchanged.'],
      [
        'Without, with',
        'The two sides of a comparison: the bypassed reference, and the processed sound judged against it.',
      ],
      [
        'Matched',
        'The louder side is turned down until both have the same integrated loudness, because louder sounds better. It does not affect delivered files.',
      ],
      ['Blind trial', 'A series of choices between hidden sides, tested against guessing.'],
      [
        'A, B',
        'Two stored versions of the chain, to compare with each other or with the current one; lost when the page closes.',
      ],
      ['Listening point', 'The place in the chain up to which the sound is heard and measured.'],
      ['Difference only', 'Processed minus bypassed, played instead of either side.'],
      [
        'Peaks limited',
        'No peak above −1 dBFS reaches your ears, whatever the settings. It does not affect delivered files.',
      ],
      ['Silent', 'The output is below −90 dBFS.'],
      ['Loop', 'A range of the take that repeats.'],
    ],
  },
  {
    title: 'Equaliser',
    terms: [
      ['High-pass', 'Attenuates frequencies below its corner; a low-pass, those above.'],
      ['Bell', 'Boosts or cuts around a frequency.'],
      ['Shelf', 'Boosts or cuts everything below or above a frequency.'],
      ['Notch', 'Removes a narrow range of frequencies.'],
      ['Q', 'How narrow a band is: higher is narrower.'],
      ['Slope', 'How steeply a pass filter falls, in dB per octave.'],
      ['Sweep', 'To move a narrow boost along the frequencies, to find by ear what sounds bad.'],
      [
        'Design',
        'How a filter is computed: matched to its analogue shape up to the highest frequencies, or bilinear, which squeezes it there.',
      ],
    ],
  },
  {
    title: 'Compressor and de-esser',
    terms: [
      ['Threshold', 'The level above which gain is reduced.'],
      ['Ratio', 'How many dB above the threshold become 1 dB: 4 at 4:1.'],
      ['Knee', 'The range of levels over which the ratio sets in.'],
      ['Attack, release', 'How fast gain goes down, and how fast it comes back.'],
      ['Gain reduction', 'By how much a stage turns the sound down.'],
      ['Makeup gain', 'Gain added after the reduction.'],
      [
        'Peak, RMS',
        'Two ways to detect a level: by the highest point of the wave, or by its average power over a short time.',
      ],
      ['Lookahead', 'How far ahead the level is detected, so that the gain is down in time.'],
      [
        'Side-chain',
        'The signal that the detector listens to, which need not be the one that is turned down.',
      ],
      ['Crossover', 'The frequency at which a sound is split into a lower and an upper part.'],
      [
        'Max, median',
        'Of gain reduction over the take: the largest value, and the median where there is any reduction.',
      ],
      ['Range', 'The largest reduction that a de-esser makes.'],
      ['Sibilance', 'The hiss of S and SH sounds, which a de-esser reduces.'],
    ],
  },
  {
    title: 'Saturator',
    terms: [
      ['Drive', 'How hard the wave is driven into the curve.'],
      ['Bias', 'Shifts the wave along the curve, so that its two halves are shaped differently.'],
      ['Mix', 'How much processed sound is blended with the unprocessed.'],
    ],
  },
  {
    title: 'Figures',
    terms: [
      ['dBFS', 'Level relative to full scale: 0 is the largest value of a fixed-point file.'],
      ['dBTP', 'True peak: the highest point of the wave, also between samples (ITU-R BS.1770).'],
      ['LUFS', 'Loudness relative to full scale (ITU-R BS.1770). 1 LU is a difference of 1 dB.'],
      ['Integrated', 'Loudness of the whole take without its pauses (ITU-R BS.1770).'],
      ['Momentary, short-term', 'Loudness of the last 0.4 s, and of the last 3 s (EBU Tech 3341).'],
      ['Loudness range', 'How far apart quiet and loud passages are, in LU (EBU Tech 3342).'],
      ['Crest factor', 'Peak level minus RMS level, in dB.'],
      [
        'Sibilance to vowels',
        'Level of S and SH relative to the vowels next to them: the median over the take, in dB.',
      ],
      ['DC', 'DC offset: how far the middle of the wave is from zero, as a percentage of full scale.'],
      ['Noise floor', 'The level that remains in the pauses.'],
    ],
  },
]
