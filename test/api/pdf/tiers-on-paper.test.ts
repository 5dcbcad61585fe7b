import { expect, it } from 'vitest'
import { tellerOf } from '../../../api/pdf/teller.ts'
import { tierRows } from '../../../api/pdf/tiers-on-paper.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

it('says of each build of which nothing is expected by the day why that is so', () => {
  const document = sampleRevision()
  const [first, ...others] = document.builds
  const byDate = { until: '2026-12-20', learnedOn: '2026-11-26', expectedMinor: 81_524, low10Minor: 78_587, high90Minor: 83_930, waits: 2 }
  const plain = { ...others[0]!, byDate: null }
  const holed = { ...plain, cost: { ...plain.cost, today: { complete: false as const, missing: [] } } }
  const bare = { ...plain, cost: { ...plain.cost, lines: [] } }
  const dated = tierRows([{ ...first!, byDate }, plain, holed, bare], tellerOf(document)).find(({ mark }) => mark === 'byDate')
  expect(dated?.cells.map(({ words }) => words)).toEqual(['', 'not known: too little recorded', 'no total today', 'nothing is bought'])
})
