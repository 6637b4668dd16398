import { existsSync, readdirSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { CHROMIUM } from '../../test/setup/chromium'
import { RECORDING } from '../setup/app-page'
import type { EngineName } from './drive/engine'

/** Where Debian keeps libraries; the folder's name says which machine they are for. */
const LIBRARIES = '/usr/lib'

/** Firefox as it is driven. `FIREFOX_PATH` sets another. */
export const FIREFOX = process.env.FIREFOX_PATH ?? '/usr/bin/firefox-esr'

/** WebKit's window for automation. `MINIBROWSER_PATH` sets another. */
export const MINIBROWSER =
  process.env.MINIBROWSER_PATH ?? libraryFile('webkit2gtk-4.1/MiniBrowser') ?? '/usr/bin/MiniBrowser'

interface Need {
  /** The Debian package that brings it. */
  readonly package: string
  readonly present: () => boolean
}

const shared: readonly Need[] = [
  { package: 'xvfb', present: () => isProgram('Xvfb') },
  { package: 'pulseaudio', present: () => isProgram('pulseaudio') && isProgram('parec') },
  { package: 'alsa-utils', present: () => existsSync(RECORDING) },
]

const needs: Readonly<Record<EngineName, readonly Need[]>> = {
  chromium: [{ package: 'chromium', present: () => existsSync(CHROMIUM.executablePath) }],
  firefox: [{ package: 'firefox-esr', present: () => existsSync(FIREFOX) }],
  webkit: [
    {
      package: 'webkit2gtk-driver',
      present: () => isProgram('WebKitWebDriver') && existsSync(MINIBROWSER),
    },
    gstreamer('plugins-good', 'libgstisomp4.so'),
    gstreamer('plugins-bad', 'libgstfaad.so'),
    gstreamer('libav', 'libgstlibav.so'),
    gstreamer('pulseaudio', 'libgstpulseaudio.so'),
  ],
}

/** The Debian packages that are absent of those that engines need. */
export function missingPackages(engines: readonly EngineName[]): string[] {
  const all = [...shared, ...engines.flatMap((engine) => needs[engine])]
  return all.filter(({ present }) => !present()).map((need) => need.package)
}

function gstreamer(part: string, plugin: string): Need {
  return {
    package: `gstreamer1.0-${part}`,
    present: () => libraryFile(`gstreamer-1.0/${plugin}`) !== null,
  }
}

function isProgram(name: string): boolean {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, name)))
}

function libraryFile(path: string): string | null {
  const folders = existsSync(LIBRARIES) ? readdirSync(LIBRARIES) : []
  return folders.map((folder) => join(LIBRARIES, folder, path)).find(existsSync) ?? null
}
