type Term = readonly [term: string, meaning: string]

/** Terms that belong together. */
export interface TermGroup {
  readonly title: string
  readonly terms: readonly Term[]
}

/** The terms of the trade, of the standards, and the few of our own that the screen uses. */
export const termGroups: readonly TermGroup[] = [
  {
    title: 'The comparison',
    terms: [
      ['Take', 'The recording at hand: one lead vocal.'],
      ['Backing', 'What the voice has to be heard over.'],
      ['Chain', 'The stages in the order in which the sound runs through them.'],
      ['Stage', 'One step of the chain: an equaliser, a compressor, a saturator, a de-esser or a gain.'],
      ['Bypass', 'To lead the sound past a stage, so that it leaves as it came.'],
      [
        'Without, with',
        'The two sides of a comparison: the bypassed reference, and what is judged against it.',
      ],
      [
        'Matched',
        'Both sides are brought to the same integrated loudness, for louder sounds better. Files know nothing of it.',
      ],
      ['Blind trial', 'A run of choices between hidden sides, counted against guessing.'],
      [
        'A, B',
        'Two stored versions of the chain, to be compared with each other or with the current chain; gone when the page closes.',
      ],
      ['Ear', 'The place on the path up to which the sound is heard and measured.'],
      ['Only what was removed', 'The difference of both sides, in place of either.'],
      [
        'Guarded',
        'No peak leaves for your ears above −1 dBFS, whatever the settings. Files know nothing of it.',
      ],
      ['Silent', 'Nothing above −90 dBFS goes out.'],
      ['Loop', 'A stretch of the take that plays again and again.'],
    ],
  },
  {
    title: 'Equaliser',
    terms: [
      ['High-pass', 'Takes away what lies below its frequency; a low-pass, what lies above.'],
      ['Bell', 'Lifts or cuts around a frequency.'],
      ['Shelf', 'Lifts or cuts all that lies below or above a frequency.'],
      ['Notch', 'Takes out a narrow place.'],
      ['Q', 'How narrow a band is: higher is narrower.'],
      ['Slope', 'How steeply a pass falls, in dB for each octave.'],
      [
        'Sweep',
        'To hold a band up narrowly and move it along the frequencies, to find by ear what sounds bad.',
      ],
      [
        'Design',
        'How a filter is worked out: matched to its analogue shape up to the top, or bilinear, which squeezes it there.',
      ],
    ],
  },
  {
    title: 'Compressor and de-esser',
    terms: [
      ['Threshold', 'The level above which gain is reduced.'],
      ['Ratio', 'How many dB above the threshold become one dB: at 4:1, four.'],
      ['Knee', 'The range of levels over which the ratio sets in.'],
      ['Attack, release', 'How fast gain goes down, and how fast it comes back.'],
      ['Gain reduction', 'By how much a stage turns the sound down just now.'],
      ['Makeup gain', 'Level given back after the reduction.'],
      [
        'Peak, RMS',
        'Two ways to read a level: by the highest point of the wave, or by its power over a short time.',
      ],
      ['Lookahead', 'How far ahead the level is read, so that the gain is down in time.'],
      [
        'Side-chain',
        'The sound that a stage reads its level from, which need not be the sound it turns down.',
      ],
      ['Crossover', 'The frequency at which a sound is split into a lower and an upper part.'],
      [
        'Most, typical',
        'Of gain reduction along the take: the largest, and the middle one of all that is more than none.',
      ],
      ['Range', 'The most that a de-esser ever takes away.'],
      ['Sibilance', 'The hiss of S, T and the like; a de-esser holds it back.'],
    ],
  },
  {
    title: 'Saturator',
    terms: [
      ['Drive', 'How far the wave is pushed into the bend of the curve.'],
      ['Bias', 'Moves the wave along the curve, so that its two halves are bent differently.'],
      ['Mix', 'How much of the stage’s sound there is beside the untouched one.'],
    ],
  },
  {
    title: 'Figures',
    terms: [
      ['dBFS', 'Level against full scale: 0 is the largest value that a file of whole numbers holds.'],
      ['dBTP', 'True peak: the highest point of the wave between the samples too (ITU-R BS.1770).'],
      ['LUFS', 'Loudness against full scale (ITU-R BS.1770). A difference of 1 LU is 1 dB.'],
      ['Integrated', 'Loudness of the whole, pauses left out (ITU-R BS.1770).'],
      ['Momentary, short-term', 'Loudness of the last 0.4 s, and of the last 3 s (EBU Tech 3341).'],
      ['Loudness range', 'How far quiet and loud passages lie apart, in LU (EBU Tech 3342).'],
      ['Crest factor', 'Peak level less RMS level, in dB.'],
      [
        'Sibilance to vowels',
        'How loud S and SH are against the vowels next to them: the median of all in the take, in dB.',
      ],
      ['DC', 'How far the middle of the wave lies off zero, as a share of full scale.'],
      ['Noise floor', 'The level that is left in the pauses.'],
    ],
  },
]
