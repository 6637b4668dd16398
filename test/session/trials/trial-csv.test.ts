import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { trialsCsv } from '../../../src/session/trials/trial-csv'
import type { TrialRecord } from '../../../src/session/trials/trial-record'

const finished: TrialRecord = {
  number: 1,
  begunAt: '2024-03-01T10:20:30.000Z',
  takeName: 'Take 3.wav',
  compared: '1 Equaliser, band b',
  sides: { bypassed: 'without', processed: 'with' },
  kind: 'name-x',
  rounds: 2,
  matching: { bypassedDb: 0, processedDb: -1.234, measuredOver: 'loop' },
  answers: [
    { hidden: 'processed', said: 'processed', seconds: 4.04 },
    { hidden: 'bypassed', said: 'processed', seconds: 12 },
  ],
  finished: true,
}

/** A reader of the grammar in RFC 4180, section 2, written from it alone. */
function readCsv(text: string): string[][] {
  const rows: string[][] = []
  let rest = text
  while (rest !== '') {
    const row: string[] = []
    for (;;) {
      const match = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/.exec(rest)
      if (!match) throw new Error(`not a CSV field: ${rest.slice(0, 20)}`)
      row.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '')
      rest = rest.slice(match[0].length)
      if (match[3] === '\r\n') break
    }
    rows.push(row)
  }
  return rows
}

describe('trialsCsv(trials)', () => {
  it('reads back as it was, whatever the take is called (RFC 4180, section 2: CRLF, quotes, doubled quotes)', () => {
    const name = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', 'é', ';') })
    fc.assert(
      fc.property(name, (takeName) => {
        const rows = readCsv(trialsCsv([{ ...finished, takeName }]))
        expect(rows.map((row) => row.length)).toEqual(rows.map(() => 20))
        const read = takeName.startsWith('\r') ? `'${takeName}` : takeName
        expect(rows.slice(1).map((row) => row[2])).toEqual([read, read])
      }),
    )
  })

  // OWASP, "CSV Injection": cells that begin with =, +, -, @, tab or carriage return are read as formulas; a single quote
  // in front makes text of them.
  it.each(['=1+1.wav', '+take.wav', '-take.wav', '@take.wav', '\ttake.wav', '\rtake.wav'])(
    'is no formula to a spreadsheet where a take is called %j',
    (takeName) => {
      const rows = readCsv(trialsCsv([{ ...finished, takeName }]))
      expect(rows[1]?.[2]).toBe(`'${takeName}`)
    },
  )

  it('leaves negative figures and names with a sign inside them as they are', () => {
    const [, row] = readCsv(trialsCsv([{ ...finished, takeName: 'a=b-c.wav' }]))
    expect(row?.[2]).toBe('a=b-c.wav')
    expect(row?.[13]).toBe('-1.23')
  })

  it('has a row for each round, with units in the header', () => {
    const [header, first, second] = readCsv(trialsCsv([finished]))
    expect(header?.join()).toMatch(/gain of side 2 \(dB\).*time \(s\)/)
    expect(first?.slice(7)).toEqual('2,finished,1,0.75,loop,0.00,-1.23,1,X,with,with,1,4.0'.split(','))
    expect(second?.slice(14)).toEqual('2,X,without,with,0,12.0'.split(','))
  })

  it('calls the sides of two versions by their names', () => {
    const sides = { bypassed: '\u2068boosts first\u2069', processed: 'B' }
    const compared = `${sides.bypassed} against B`
    const [, row] = readCsv(trialsCsv([{ ...finished, compared, sides }]))
    expect(row?.slice(3, 7)).toEqual(['boosts first against B', 'boosts first', 'B', 'X is one of the two'])
    expect(row?.slice(16, 18)).toEqual(['B', 'B'])
  })

  it('counts abandoned trials, gives them no result, and keeps those without any answer', () => {
    const abandoned = { ...finished, number: 2, finished: false }
    const rows = readCsv(trialsCsv([finished, abandoned, { ...abandoned, number: 3, answers: [] }]))
    expect(rows.slice(1).map((row) => row.slice(0, 1).concat(row.slice(8, 11)).join())).toEqual([
      '1,finished,1,0.75',
      '1,finished,1,0.75',
      '2,abandoned,,',
      '2,abandoned,,',
      '3,abandoned,,',
    ])
  })
})
