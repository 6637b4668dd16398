import { lazyPart } from './lazy-part'

/** What keeps the detail of the selected stage up to date, fetched with the first take. */
export const detailFollowing = lazyPart('What is known of the selected stage', async () => {
  const [{ followSelectedStage }, { StageDetails }] = await Promise.all([
    import('./follow-selected-stage'),
    import('../compute/stage-details'),
  ])
  return { followSelectedStage, StageDetails }
})
