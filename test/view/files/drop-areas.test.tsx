import { cleanup, fireEvent, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { App } from '../../../src/session/app'
import { DropAreas } from '../../../src/view/files/drop-areas'
import { eventually } from '../../setup/eventually'
import { showOnPage } from '../keys/on-page'

let app: App
const voice = new File(['voice'], 'voice.wav')
const band = new File(['band'], 'band.wav')
const dragFiles = () => fireEvent.dragOver(document.body, { dataTransfer: { types: ['Files'] } })

beforeEach(() => {
  app = showOnPage(<DropAreas />).app
})
afterEach(cleanup)

describe('dropping files', () => {
  it('shows where to drop only while files are dragged, and says that nothing is sent', async () => {
    expect(screen.queryByText('Take')).toBeNull()
    dragFiles()
    expect(await screen.findByText(/never leaves this computer/)).toBeDefined()
    fireEvent.dragLeave(document.body, { relatedTarget: null })
    expect(screen.queryByText('Take')).toBeNull()
  })

  it('takes no notice of text that is dragged', () => {
    fireEvent.dragOver(document.body, { dataTransfer: { types: ['text/plain'] } })
    expect(screen.queryByText('Take')).toBeNull()
  })

  it('opens all files of a drop together, the spare ones too, and puts the areas away', async () => {
    const open = vi.spyOn(app.takes, 'openTogether').mockResolvedValue([])
    const spare = new File(['spare'], 'spare.wav')
    dragFiles()
    const area = await screen.findByRole('region', { name: 'Drop the take here' })
    fireEvent.drop(area, { dataTransfer: { types: ['Files'], files: [voice, band, spare] } })
    expect(open.mock.calls).toEqual([[{ take: voice, backing: band, unused: [spare] }]])
    await eventually(() => expect(screen.queryByText('Take')).toBeNull())
  })

  it('does not leave the page for a file that is dropped beside the areas', () => {
    const drop = new Event('drop', { bubbles: true, cancelable: true })
    Object.defineProperty(drop, 'dataTransfer', { value: { types: ['Files'], files: [voice] } })
    document.body.dispatchEvent(drop)
    expect(drop.defaultPrevented).toBe(true)
  })
})
