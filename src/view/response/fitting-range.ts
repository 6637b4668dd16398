import { bandsOf, type ChainDoc } from '../../core'

/** The largest shows the highest gain that can be set, 24 dB, with room for its letter. */
const RANGES_DB = [12, 18, 24, 30] as const

/** Least room between the highest gain and the edge of the plot, dB. */
const ROOM_DB = 2

/** The smallest scale that shows every gain of the chain with some room, dB. */
export function fittingRangeDb(chain: ChainDoc): number {
  const bands = chain.stages.flatMap((stage) => bandsOf(stage) ?? [])
  const most = Math.max(0, ...bands.map((band) => Math.abs(band.gainDb)))
  return RANGES_DB.find((range) => range >= most + ROOM_DB) ?? RANGES_DB[3]
}
