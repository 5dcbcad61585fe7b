import { expect, it } from 'vitest'
import { deskInputs } from '../../../../web/app/quotes/desk-inputs.ts'
import { sampleDraft, sampleView } from './sample-draft.ts'

it('reckons with the rates and regions of the server, and with what is edited in place of what was stored', () => {
  const draft = sampleDraft
  const rates = [{ currency: 'CAD', seenOn: '2026-10-01', rate: 0.73, source: 'the bank' }]
  const regions = [{ id: 'north', name: 'North', storeIds: ['upriver'], version: 1 }]
  const view = { ...sampleView(1, draft), rates, regions }
  const edited = { draft: { ...draft, title: 'Another' }, products: [], prices: [] }
  const inputs = deskInputs(view, edited, view.install)
  expect(inputs).toMatchObject({ rates, regions, stores: view.stores, asOf: view.asOf, draft: { title: 'Another' } })
  expect('rates' in deskInputs(sampleView(1, draft), edited, view.install)).toBe(false)
})
