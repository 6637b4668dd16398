import { lazyPart } from './lazy-part'

/** What reads files, fetched when there is one to read. */
export const fileReading = lazyPart(
  'The part of Evenhand that reads sound files',
  () => import('../files/decode'),
)

/** What makes the delivered file, fetched with its sheet. */
export const deliveryMaking = lazyPart('Delivery', () => import('./delivery'))

/** What writes the delivered file. */
export const wavWriting = lazyPart(
  'The part of Evenhand that writes WAV files',
  () => import('../files/wav/wav-writer'),
)

/** What runs blind trials, fetched with their sheet. */
export const trialRunning = lazyPart('The blind trial', () => import('./trials/trials'))

/** What reads stages from the clipboard, with the schemas that check documents. */
export const stageReading = lazyPart(
  'The part of Evenhand that reads the clipboard',
  () => import('./chain/read-stages'),
)
