import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Plugin } from 'vite'

/** In the built folder. */
const FILE_NAME = 'third-party-licences.txt'

const INTRODUCTION = 'Evenhand ships code and a typeface of these packages, under their own licences.'

interface Package {
  readonly name: string
  readonly version: string
  readonly license: string
  readonly homepage: string
  readonly text: string
}

/**
 * Writes the licences of all packages of which something is in the page, its workers or the audio thread.
 * @returns a plugin for the page's build, which writes the file, and one for those of workers, which come first
 */
export function thirdPartyNotices(): { readonly ofPage: Plugin; readonly ofWorkers: Plugin } {
  const packages = new Map<string, Package>()
  const collect = (moduleIds: Iterable<string>) => {
    for (const id of moduleIds) {
      const folder = packageFolder(id)
      if (folder !== null && !packages.has(folder)) packages.set(folder, readPackage(folder))
    }
  }
  const collectChunks: Pick<Plugin, 'renderChunk'> = {
    renderChunk(_code, { moduleIds }) {
      collect(moduleIds)
      return null
    },
  }
  return {
    ofWorkers: { name: 'third-party-notices-of-workers', ...collectChunks },
    ofPage: {
      name: 'third-party-notices',
      apply: 'build',
      ...collectChunks,
      generateBundle(_options, bundle) {
        // Faces and the like are files that styles name, and no modules.
        for (const output of Object.values(bundle))
          if (output.type === 'asset') collect(output.originalFileNames.map((file) => resolve(file)))
        this.emitFile({ type: 'asset', fileName: FILE_NAME, source: noticesOf([...packages.values()]) })
      },
    },
  }
}

/** The folder of the package that a module belongs to; null for the project's own. */
function packageFolder(moduleId: string): string | null {
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(moduleId.replaceAll('\\', '/'))?.[0] ?? null
}

/** @throws Error when the package comes without a licence's text: it must not be shipped then */
function readPackage(folder: string): Package {
  const {
    name,
    version,
    license,
    homepage = '',
  } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  return { name, version, license, homepage, text: licenceText(folder) }
}

function licenceText(folder: string): string {
  const files = readdirSync(folder)
  const licence = files.find((file) => /^(licen[cs]e|copying)/i.test(file))
  if (licence) return readFileSync(join(folder, licence), 'utf8').trim()
  // Some have it at the end of what is to be read first.
  const readme = files.find((file) => /^readme/i.test(file))
  const text = readme && /^#+ licen[cs]e\s+(.+)/ims.exec(readFileSync(join(folder, readme), 'utf8'))?.[1]
  if (!text) throw new Error(`${folder} has no licence text`)
  return text.trim()
}

function noticesOf(packages: readonly Package[]): string {
  const sections = packages
    .toSorted((a, b) => a.name.localeCompare(b.name))
    .map(({ name, version, license, homepage, text }) =>
      [`${name} ${version} (${license})`, homepage, '', text].join('\n'),
    )
  return `${[INTRODUCTION, ...sections].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`
}
