import { describe, expect, it } from 'vitest'
import { bandParameters, chainOf, type StageDoc, stageDefinitions, stageKinds } from '../../../src/core'
import type { Parameter } from '../../../src/core/stages/parameter'
import { valueAt } from '../../../src/view/controls/positions'
import { band, equaliserWith, stageWith } from '../../setup/chains'
import { heard, listenTo, warmEngine } from '../../setup/engine'
import { splatterDb } from '../../setup/splatter'

const RATE = 48_000
const TONE_HZ = 1000
/** So quiet that the guard has nothing to do at any setting. */
const TONE_LEVEL = 0.03
/** As far as a hand's movement spreads a tone and its harmonics; beyond lies what is heard as grit or clicks. */
const APART_HZ = 350
const STEPS_PER_SECOND = 60
/** Switches and choices change this often. */
const CHOICES_PER_SECOND = 4

const tone = Float32Array.from(
  { length: 10 * RATE },
  (_, n) => TONE_LEVEL * Math.sin((2 * Math.PI * TONE_HZ * n) / RATE),
)

/** Something for each stage to do on the quiet tone. */
const atWork: Record<string, object> = {
  compressor: { thresholdDb: -48 },
  'de-esser': { crossoverHz: 1000, thresholdDb: -58 },
  saturator: { driveDb: 24 },
  gain: { gainDb: 12 },
}

/** The value of a control that goes all the way up and down again in `travelSeconds` each. */
function valueDuring(
  parameter: Parameter,
  seconds: number,
  travelSeconds: number,
): number | string | boolean {
  const choice = Math.floor(seconds * CHOICES_PER_SECOND)
  switch (parameter.type) {
    case 'number':
      return valueAt(parameter, 1 - Math.abs(1 - seconds / travelSeconds))
    case 'choice':
      return parameter.options[choice % parameter.options.length]?.value ?? parameter.default
    case 'switch':
      return choice % 2 === 0
    case 'list':
      throw new Error('a list is no control')
  }
}

/** What a control leaves behind while it moves as a hand moves it on the screen, dB re the tone. */
function splatterOf(stageDuring: (seconds: number) => StageDoc, travelSeconds = 2): number {
  const settingsAt = (step: number) => listenTo(chainOf([stageDuring(step / STEPS_PER_SECOND)]))
  const engine = warmEngine([tone], settingsAt(0), RATE)
  engine.play(0)
  heard(engine, RATE / 2)
  let last = 0
  const output = heard(engine, 2 * travelSeconds * RATE, (frame) => {
    const step = Math.floor((frame / RATE) * STEPS_PER_SECOND)
    if (step !== last) engine.set(settingsAt(step))
    last = step
  })
  const limits = { sampleRate: RATE, toneHz: TONE_HZ, toneLevel: TONE_LEVEL, apartHz: APART_HZ }
  return splatterDb(output, limits)
}

const shapes = ['high-pass', 'low-shelf', 'bell', 'notch', 'high-shelf', 'low-pass'] as const

interface Control {
  readonly name: string
  readonly parameter: Parameter
  stageDuring(seconds: number): StageDoc
}

/** Every control of every stage, straight from the tables; those of a band once for each shape. */
function controls(q: number, travelSeconds = 2): Control[] {
  const ofStages = stageKinds.flatMap((kind) =>
    Object.entries<Parameter>(stageDefinitions[kind].parameters)
      .filter(([, parameter]) => parameter.type !== 'list')
      .map(([key, parameter]) => ({
        name: `${kind} ${key}`,
        parameter,
        stageDuring: (seconds: number) =>
          stageWith(kind, { ...atWork[kind], [key]: valueDuring(parameter, seconds, travelSeconds) }),
      })),
  )
  const ofBands = shapes.flatMap((shape) =>
    Object.entries<Parameter>(bandParameters).map(([key, parameter]) => ({
      name: `${shape} ${key}`,
      parameter,
      stageDuring: (seconds: number) =>
        equaliserWith([
          { ...band({ gainDb: 12, q, shape }), [key]: valueDuring(parameter, seconds, travelSeconds) },
        ]),
    })),
  )
  return [...ofStages, ...ofBands]
}

const usual = controls(1)
const numbers = usual.filter(({ parameter }) => parameter.type === 'number')
const choices = usual.filter(({ parameter }) => parameter.type !== 'number')

describe('a control moved over its whole range in 2 s, 60 steps a second, under a steady tone', () => {
  it('is looked at for every control there is', () => {
    expect(numbers.length).toBeGreaterThan(30)
    expect(choices.length).toBeGreaterThan(15)
    const { shape } = bandParameters
    expect(shape.type === 'choice' && shape.options.map(({ value }) => value)).toEqual(shapes)
  })

  it.each(numbers)('$name leaves less than -60 dB beyond 350 Hz of the tone and its harmonics', (control) => {
    expect(splatterOf(control.stageDuring)).toBeLessThan(-60)
  })

  it.each(choices)('$name, changed 4 times a second, leaves less than -60 dB there', (control) => {
    expect(splatterOf(control.stageDuring)).toBeLessThan(-60)
  })

  it.each(stageKinds)('%s, switched on and off 4 times a second, leaves less than -60 dB there', (kind) => {
    const stageDuring = (seconds: number) => ({
      ...(kind === 'equaliser' ? equaliserWith([band({ gainDb: 12 })]) : stageWith(kind, atWork[kind] ?? {})),
      on: Math.floor(seconds * CHOICES_PER_SECOND) % 2 === 0,
    })
    expect(splatterOf(stageDuring)).toBeLessThan(-60)
  })

  const resonant = controls(6, 4).filter(({ name }) => /frequencyHz|q|shape|on$/.test(name))
  it.each(resonant)('$name at Q 6, all the way in 4 s, leaves less than -60 dB there', (control) => {
    expect(splatterOf(control.stageDuring, 4)).toBeLessThan(-60)
  })

  it('would see a control that jumps: a tone made 12 dB louder at once, 4 times a second', () => {
    const jumping = tone.map((x, n) => (Math.floor((n * CHOICES_PER_SECOND) / RATE) % 2 ? 4 * x : x))
    const limits = { sampleRate: RATE, toneHz: TONE_HZ, toneLevel: TONE_LEVEL, apartHz: APART_HZ }
    expect(splatterDb(jumping, limits)).toBeGreaterThan(-45)
  })
})
