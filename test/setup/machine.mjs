// Sees to what the tests need beside npm packages: a Chromium, and the recordings of Debian's alsa-utils.
// On Debian as root it installs what is absent; elsewhere it says what is missing and what to do.
// Plain JavaScript, because it runs before anything else is known to work.
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'

const RECORDINGS = '/usr/share/sounds/alsa'

const needs = [
  {
    package: 'chromium',
    present: existsSync(process.env.CHROMIUM_PATH ?? '/usr/bin/chromium'),
    otherwise: 'Install a Chromium and set CHROMIUM_PATH to its program file.',
  },
  {
    package: 'alsa-utils',
    present: existsSync(`${RECORDINGS}/Front_Center.wav`),
    otherwise: `Put the spoken recordings of Debian's alsa-utils package under ${RECORDINGS}.`,
  },
]

const missing = needs.filter(({ present }) => !present)
if (missing.length > 0) {
  if (isDebian() && process.getuid?.() === 0) {
    const packages = missing.map((need) => need.package)
    console.log(`Installing ${packages.join(' and ')} ...`)
    aptGet('update')
    aptGet('install', '--yes', '--no-install-recommends', ...packages)
  } else {
    for (const need of missing) console.error(`Missing for the tests: ${need.package}. ${need.otherwise}`)
    process.exit(1)
  }
}

function isDebian() {
  return (
    existsSync('/etc/os-release') && /^ID(_LIKE)?=.*debian/m.test(readFileSync('/etc/os-release', 'utf8'))
  )
}

function aptGet(...words) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  execFileSync('apt-get', ['-qq', ...words], { stdio: ['ignore', 'ignore', 'inherit'], env })
}
