import { lazyPart } from './lazy-part'

/** What reads files, fetched when there is one to read. */
export const fileReading = lazyPart(
  'The part of Evenhand that reads sound files',
  () => import('../files/decode'),
)

/** What writes the delivered file. */
export const wavWriting = lazyPart(
  'The part of Evenhand that writes WAV files',
  () => import('../files/wav/wav-writer'),
)

/** What reads stages from the clipboard, with the schemas that check documents. */
export const stageReading = lazyPart(
  'The part of Evenhand that reads the clipboard',
  () => import('./chain/read-stages'),
)
