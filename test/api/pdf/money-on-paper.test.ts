import { describe, expect, it } from 'vitest'
import type { BuildPaper } from '../../../api/pdf/paper.ts'
import { quotePaper } from '../../../api/pdf/quote-paper.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { QuoteDraft } from '../../../core/quote/draft.ts'
import { revisionDocument } from '../../../core/quote/revision-document.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { sampleInputs } from '../../support/sample-revision.ts'

const heading = { number: '2026-0147', revision: 1, issuedOn: '2026-10-20', standsUntil: '2026-10-31', advisor: 'Bram Ockley' }

function paperOf(change: (inputs: QuoteInputs) => Partial<QuoteInputs>, terms: Partial<QuoteDraft> = {}) {
  const inputs = sampleInputs({ builds: 1 })
  const document = revisionDocument({ ...inputs, draft: { ...inputs.draft, ...terms }, ...change(inputs) }, heading)
  return quotePaper({ document, customerName: 'Ines Tillish', paper: 'a4', links: null, draft: false }).paper
}
const inStores = (fields: Partial<Store>) => (inputs: QuoteInputs) => ({ stores: inputs.stores.map((store) => ({ ...store, ...fields })) })
const figure = (text: string | undefined): number => Math.round(Number(text?.replaceAll(',', '').replace('\u2212', '-')) * 100)

/** By hand: 247 + 175 + 76 are 498; unrounded they are 499.2. */
it('running costs add up as they are printed, and no line ends within a range', () => {
  const document = revisionDocument(sampleInputs({ builds: 1 }), heading)
  const items = [247.4, 175.4, 76.4].map((kwhPerYear, index) => ({ what: `Part ${index}`, kwhPerYear, highKwhPerYear: 2 * kwhPerYear }))
  const energy = { items, kwhPerYear: 499.2, costMinorPerYear: 8_486, lowCostMinorPerYear: 8_486, highCostMinorPerYear: 16_973 }
  const builds = document.builds.map((build) => ({ ...build, report: { ...build.report, figures: { ...build.report.figures, energy } } }))
  const { paper } = quotePaper({ document: { ...document, builds }, customerName: 'Ines Tillish', paper: 'a4', links: null, draft: false })
  const ends = (text: string | undefined): number[] => (text ?? '').split('\u00a0to\u00a0').map(Number)
  const rows = (paper.running?.rows ?? []).map(({ cells }) => ends(cells[0]))
  expect(rows).toEqual([[247, 495], [175, 351], [76, 153]]) // prettier-ignore
  expect(ends(paper.running?.energy[0])).toEqual([498, 999])
  expect(paper.running?.cost[0]).toBe('about $85\u00a0to\u00a0$170')
})

describe('money on paper', () => {
  it('has the discount in a column that adds up, with its reason, and the deposit under the total', () => {
    const { first, detail } = paperOf(() => ({}), {
      discount: { kind: 'share', basisPoints: 1000, storeId: null, reason: 'club evening' },
      deposit: { kind: 'share', basisPoints: 2500 },
    })
    expect(first.sums.map(({ label }) => label)).toEqual([
      'Goods',
      'Discount',
      'Delivery',
      expect.stringContaining('Tax'),
      'Today',
      'Deposit',
    ])
    const of = (label: string) => figure(first.sums.find((sum) => sum.label.startsWith(label))?.cells[0]?.replace('$', ''))
    expect(of('Goods') + of('Discount') + of('Delivery') + of('Tax')).toBe(of('Today'))
    expect(of('Deposit')).toBe(Math.round(of('Today') / 4))
    expect(first.priceNote).toContain('Discount: 10 % off the goods: club evening. Deposit when you say yes: 25 % of today’s total.')
    expect(detail.discounted).toBe(true)
  })

  it('has a receipt of ours for our services, so that the receipts make up the total', () => {
    const { detail } = paperOf((inputs) => ({
      draft: {
        ...inputs.draft,
        builds: inputs.draft.builds.map((build) => ({
          ...build,
          services: [{ id: 's', name: 'Carrying in', quantity: 1, priceMinor: 4500 }],
        })),
      },
    }))
    expect(detail.receipts.at(-1)).toMatchObject({ store: 'Our services', total: '45.00' })
    const sum = detail.receipts.reduce((total, receipt) => total + figure(receipt.total), 0)
    expect(sum).toBe(figure(detail.total.figure?.replace('$', '')))
  })

  it('says the size that was asked for, by its length or by the name of a common size', () => {
    const asked = (need: Partial<QuoteDraft['need']>) =>
      paperOf((inputs) => ({ draft: { ...inputs.draft, need: { ...inputs.draft.need, ...need } } })).first.need
    expect(asked({ lengthMm: null, commonSizeId: 'cm-90' })).toContain('Asked for: a 90 cm tank;')
    expect(asked({ lengthMm: 900, commonSizeId: null })).toMatch(/Asked for: about \S+ \w+ long;/)
  })

  it('says the room to the digits of the findings', () => {
    const { first } = paperOf((inputs) => ({
      draft: { ...inputs.draft, need: { ...inputs.draft.need, exact: { ...inputs.draft.need.exact, coldestRoomC: 19, warmestRoomC: 24 } } },
    }))
    // 19 °C are 66.2 °F and 24 °C 75.2 °F, by definition.
    expect(first.need).toMatch(/room 66\.2.°F to 75\.2.°F/)
  })

  it('prints what was noted on a line under that line and no other', () => {
    const [build] = sampleInputs({ builds: 1 }).draft.builds
    const words = 'Ours is the one in the window, ask for it'
    const at = build!.lines.findIndex((line) => line.answer === 'buy')
    const lines = build!.lines.map((line, index) => (index === at && line.answer === 'buy' ? { ...line, note: words } : line))
    const terms = { builds: [{ ...build!, lines }] }
    expect(paperOf(() => ({}), terms).detail.lines.filter(({ note }) => note !== '')).toMatchObject([{ note: words }])
    expect(paperOf(() => ({})).detail.lines.every(({ note }) => note === '')).toBe(true)
  })

  it('tells tax rate by rate, and each rate of exchange with its day, source and age', () => {
    const rates = [{ currency: 'CAD', rate: 0.7312, seenOn: '2026-08-12', source: 'noon rate' }]
    const low = { name: 'Low', basisPoints: 700, kinds: ['substrate' as const], productIds: [] }
    const { first, detail } = paperOf((inputs) => ({ ...inStores({ otherRates: [low], currency: 'CAD' })(inputs), rates }))
    expect(detail.receipts.flatMap(({ tax }) => tax).filter((line) => line.startsWith('Low, 7 %: '))).toHaveLength(1)
    expect(first.priceNote).toMatch(/1 CAD = 0\.7312 USD, rate of Aug 12, 2026 \(noon rate\), which is 69 days old/)
  })

  it('says that a currency has no rate, and gives no total', () => {
    const { first } = paperOf(inStores({ currency: 'CAD' }))
    expect(first.priceNote).toMatch(/in CAD, for which no rate of exchange is set: they are in no total/)
    expect(first.tiers.every(({ cells }) => cells.every((cell) => cell.figure === null))).toBe(true)
  })

  it('states return days and warranty once a store where all its lines have the same, else on each line', () => {
    const terms = (detail: BuildPaper) => ({
      lines: detail.lines.map((line) => line.terms).filter((words) => words !== ''),
      stores: detail.receipts.map((receipt) => receipt.terms).filter((words) => words !== ''),
    })
    const alike = terms(paperOf(inStores({ returnDays: 30, warrantyMonths: 24 })).detail)
    expect(alike.lines).toEqual([])
    expect(new Set(alike.stores)).toEqual(new Set(['return within 30 days, warranty 2 years']))
    const own = paperOf((inputs) => ({
      ...inStores({ returnDays: 30, warrantyMonths: 24 })(inputs),
      products: inputs.products.map((product) => (product.kind === 'filter' ? { ...product, warrantyMonths: 36 } : product)) as Product[],
    }))
    expect(terms(own.detail).lines).toContain('return within 30 days, warranty 3 years')
    expect(own.detail.termsNote).toContain('the rights that the law gives')
  })

  it('says of every price of a club that it is as seen and no offer', () => {
    const { first, detail } = paperOf(() => ({}))
    expect(first.priceNote).toContain('as seen on the date beside it in the lines that follow, not an offer by the store')
    expect(detail.lines.every((line) => line.price === null || line.seen !== '')).toBe(true)
  })
})
