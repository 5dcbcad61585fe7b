import { describe, expect, it } from 'vitest'
import { issueFaults } from '../../../../core/quote/issue-faults.ts'
import { placeOfFault } from '../../../../web/app/quotes/fault-place.ts'
import { sampleInputs } from '../../../core/quote/sample-inputs.ts'

const empty = sampleInputs([])
const build = (id: string) => ({ id, name: '', why: '', lines: [] })

describe('what keeps a quote from being issued', () => {
  it('leads to where it is put right, whatever the rules of issuing name', () => {
    const draft = {
      ...empty.draft,
      builds: [build('a'), build('b')],
      title: '',
      standsUntil: null,
      suggestion: { buildId: 'a', reason: ' ' },
      discount: { kind: 'amount', amountMinor: 0, storeId: null, reason: '' } as const,
    }
    const faults = issueFaults({ ...empty, draft, install: { ...empty.install, mode: 'store' } }, '2026-11-01')
    expect(faults.map(({ field }) => field).toSorted()).toEqual(
      [
        'builds.0.lines',
        'builds.1.lines',
        'discount',
        'discount.reason',
        'ownStore',
        'standsUntil',
        'suggestion.reason',
        'title',
      ].toSorted(),
    )
    for (const { field } of faults) expect(placeOfFault(field, draft), field).not.toBeNull()
  })
  it('names the build by its letter and opens that build’s tank', () => {
    expect(placeOfFault('builds.1.lines', { builds: [build('a'), build('b')] })).toEqual({
      at: 'tank',
      buildId: 'b',
      words: 'the tank of build B',
    })
    expect(placeOfFault('builds.7.lines', { builds: [build('a')] })).toBeNull()
    expect(placeOfFault('builds', { builds: [build('a')] })).toBeNull()
  })
})
