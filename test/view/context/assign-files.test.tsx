import { describe, expect, it } from 'vitest'
import { assignFiles } from '../../../src/view/context/assign-files'

describe('assignFiles', () => {
  it('takes one file for what its area says', () => {
    expect(assignFiles(['a'], 'take')).toEqual({ take: 'a', backing: null, unused: [] })
    expect(assignFiles(['a'], 'backing')).toEqual({ take: null, backing: 'a', unused: [] })
  })

  it('takes the first of several for the take and the second for the backing, and has no use for the rest', () => {
    expect(assignFiles(['a', 'b', 'c'], 'backing')).toEqual({ take: 'a', backing: 'b', unused: ['c'] })
  })

  it('makes nothing of nothing', () => {
    expect(assignFiles([], 'take')).toEqual({ take: null, backing: null, unused: [] })
  })
})
