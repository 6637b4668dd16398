import type { Surroundings } from '../surroundings'
import type { Engine, EngineName } from './engine'
import { startPuppeteer } from './puppeteer-engine'
import { startWebKit } from './webkit-engine'

export const starters: Readonly<Record<EngineName, (surroundings: Surroundings) => Promise<Engine>>> = {
  chromium: (surroundings) => startPuppeteer('chromium', surroundings),
  firefox: (surroundings) => startPuppeteer('firefox', surroundings),
  webkit: startWebKit,
}
