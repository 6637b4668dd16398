import type { Part } from './part'

export const consoleAtLoad: Part = {
  title: 'console at load',
  async look(lab) {
    const complaints = await lab.complaintsAtLoad()
    return { ok: complaints.length === 0, found: complaints.length === 0 ? 'clean' : complaints.join(' | ') }
  },
}
