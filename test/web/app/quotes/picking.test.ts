import { describe, expect, it } from 'vitest'
import { COMMON_SIZES } from '../../../../core/catalog/common-sizes.ts'
import { KINDS } from '../../../../core/catalog/kinds.ts'
import type { Product } from '../../../../core/catalog/product.ts'
import { assembleBuild } from '../../../../core/quote/assemble.ts'
import type { AssembledBuild, QuoteInputs, SlotRow } from '../../../../core/quote/revision.ts'
import { METRIC, sayPhrase, US } from '../../../../core/units/say.ts'
import { makeAssembler } from '../../../../web/app/quotes/assemble-builds.ts'
import { farFrom, inOrderOfWant, readSearch } from '../../../../web/app/quotes/candidates.ts'
import { editDraft } from '../../../../web/app/quotes/draft-edit.ts'
import { kindsFor, meetsWant, sayFind, sayWant, type Want } from '../../../../web/app/quotes/meets-want.ts'
import { otherSlot } from '../../../../web/app/quotes/other-slot.ts'
import { sayProduct } from '../../../../web/app/quotes/product-words.ts'
import { readSize, spellSize } from '../../../../web/app/quotes/size-answer.ts'
import { needsTank } from '../../../../web/app/quotes/slot-findings.ts'
import { slotCells } from '../../../../web/app/quotes/slot-grid.ts'
import { sampleDraft, sampleView } from './sample-draft.ts'

const heater = (powerW: number | undefined): Product => ({
  id: `h${powerW}`, kind: 'heater', name: 'Torvane', maker: null, gtin: null, oversize: false, note: null, spec: powerW === undefined ? {} : { powerW }, parts: [], archived: false, version: 1,
}) // prettier-ignore
const want: Want = { slot: 'heat', quantity: 2, minimum: { powerW: 80 }, maximum: { powerW: 120 } }

describe('what a finding asks for', () => {
  it.each([[100, 'yes'], [80, 'yes'], [120, 'yes'], [79, 'no'], [121, 'no'], [undefined, 'unstated']] as const)('a heater of %s W: %s', (powerW, answer) => {
    expect(meetsWant(heater(powerW), want)).toBe(answer)
  }) // prettier-ignore
  it('is never met by another kind', () => {
    expect(meetsWant(heater(100), { ...want, slot: 'filter' })).toBe('no')
  })
  it('puts those that say so before those whose maker states nothing, and leaves out the rest', () => {
    expect(inOrderOfWant([heater(undefined), heater(300), heater(100)], want).map((one) => one.id)).toEqual(['h100', 'hundefined'])
    expect(inOrderOfWant([heater(300)], null)).toHaveLength(1)
  })
  it('is told in the reader’s units', () => {
    expect(sayWant(want, METRIC)).toBe('2 of them, at least 80 W, at most 120 W')
    expect(sayWant({ slot: 'filter', quantity: 1, minimum: { ratedFlowLph: 1000 } }, US)).toBe('at least 264 gal/h rated flow')
  })
  it('is asked for in words', () => {
    expect(sayFind('power', 1)).toBe('Find a power strip')
    expect(sayFind('heater', 3)).toBe('Find 3 heaters')
    expect(sayWant({ slot: 'protect_circuit', quantity: 1, minimum: {} }, US)).toBe('')
  })
  it('a kit may hold the water and fills no other slot by itself', () => {
    expect(kindsFor('hold_water')).toEqual(['tank', 'kit'])
    expect(KINDS.filter((kind) => kind !== 'kit' && kind !== 'tank').every((kind) => !kindsFor('hold_water').includes(kind))).toBe(true)
  })
  it('a product is told by what its maker states, and by nothing else', () => {
    expect(sayProduct(heater(100), METRIC)).toBe('100 W')
    expect(sayProduct(heater(undefined), METRIC)).toBe('')
  })
})

describe('how far a tank is from what was asked', () => {
  const INCH = 25.4
  const tank = (length: number, width?: number, height?: number): Product => ({
    ...heater(undefined), kind: 'tank', spec: { lengthMm: length * INCH, ...(width && { widthMm: width * INCH }), ...(height && { heightMm: height * INCH }) },
  }) as Product // prettier-ignore
  const order = (need: Parameters<typeof farFrom>[0], tanks: Product[]) => tanks.toSorted((a, b) => farFrom(need, a) - farFrom(need, b))

  /** Trade sizes: a 55 is 48 × 13 × 21 in, a 75 is 48 × 18 × 21 in, a 40 breeder is 36 × 18 × 16 in. */
  it('puts a tank of the common size before one that is only as long', () => {
    const [of55, of75, of40, bare] = [tank(48, 13, 21), tank(48, 18, 21), tank(36, 18, 16), tank(48)]
    expect(order({ lengthMm: null, commonSizeId: 'us-75' }, [bare, of55, of40, of75])).toEqual([of75, of55, of40, bare])
    expect(farFrom({ lengthMm: 48 * INCH, commonSizeId: null }, of55)).toBeCloseTo(0, 6)
    expect(farFrom({ lengthMm: null, commonSizeId: 'us-75' }, heater(100))).toBe(0)
  })
})

it.each([['2 x torvane', 2, 'torvane'], ['12×gravel', 12, 'gravel'], ['torvane 2 x', null, 'torvane 2 x'], ['0 x lamp', null, '0 x lamp'], ['  lamp ', null, 'lamp']] as const)(
  'a search for "%s" asks for %s of "%s"',
  (text, quantity, words) => expect(readSearch(text)).toEqual({ quantity, words }),
) // prettier-ignore

describe('a part looked for in the wrong slot', () => {
  it.each([
    ['sump', 'filter', 'sump'],
    ['Sumps', 'hold_water', 'sump'],
    ['return', 'filter', undefined],
    ['canister 900', 'filter', undefined],
    ['torvane', 'filter', undefined],
    ['', 'filter', undefined],
  ] as const)('%s in %s is led to %s', (words, slot, other) => {
    expect(otherSlot(words, slot)).toBe(other)
  })
})

describe('how big', () => {
  it('understands a common size and a length, with or without a unit', () => {
    expect(readSize('20 long', US).size).toEqual({ lengthMm: null, commonSizeId: 'us-20-long' })
    expect(readSize('  20  Long ', METRIC).size).toEqual({ lengthMm: null, commonSizeId: 'us-20-long' })
    expect(readSize('36', US).size).toEqual({ lengthMm: 914.4, commonSizeId: null })
    expect(readSize('36', METRIC).size).toEqual({ lengthMm: 360, commonSizeId: null })
    expect(readSize('1.2 m', US).size).toEqual({ lengthMm: 1200, commonSizeId: null })
    expect(readSize('', US).size).toEqual({ lengthMm: null, commonSizeId: null })
  })
  it('refuses what is no length and what no tank has, with the fix', () => {
    expect(readSize('big', US).fault).toMatch(/like 36 in, 90 cm or 20 long/)
    expect(readSize('5 mm', METRIC).fault).toMatch(/between 10 cm and 400 cm long/)
    expect(readSize('90 m', METRIC).fault).toMatch(/between 10 cm and 400 cm long/)
  })
  it.each(['40 gal', '40gal', '40 gallon', '40 gallons', '40-gallon', '40-Gallon tank', '40 US gallons', '40 gals', '40 gal.'])(
    'offers what is called so, however it is spelled: %s',
    (text) => {
      const answer = readSize(text, US)
      expect(answer.size).toBeNull()
      expect(answer.fault).toBe('Which one: 40 breeder or 40 long?')
      expect('choices' in answer && answer.choices?.map(({ id }) => id)).toEqual(['us-40-breeder', 'us-40-long'])
    },
  )
  it('takes a volume that means one size only, by gallons, litres or the name in full', () => {
    const idOf = (text: string, reader = US) => readSize(text, reader).size?.commonSizeId
    expect(['75-gallon', '75 gallons', '75 gal tank'].map((text) => idOf(text))).toEqual(['us-75', 'us-75', 'us-75'])
    expect(['33 gallons', '40 gallon breeder', '40-gallon breeder'].map((text) => idOf(text))).toEqual([
      'us-33-long',
      'us-40-breeder',
      'us-40-breeder',
    ])
    const litres = COMMON_SIZES.find(({ id }) => id === 'cm-45')?.labelVolumeL
    expect(['L', ' litres', ' liters', '-litre', ' l'].map((unit) => idOf(`${litres}${unit}`, METRIC))).toEqual(Array(5).fill('cm-45'))
  })
  it('offers the nearest where no size is called by the volume', () => {
    expect(readSize('46 gal', US).fault).toMatch(/^Which one: .*50 breeder/)
    expect(readSize('1000 L', METRIC).fault).toMatch(/^Which one: .*150 cm/)
  })
  it('reads back every size it spells', () => {
    for (const { id } of COMMON_SIZES) {
      const size = { lengthMm: null, commonSizeId: id }
      expect(readSize(spellSize(size, US), US).size, id).toEqual(size)
    }
  })
})

describe('the bracket of a kit', () => {
  const row = (slot: SlotRow['slot'], answer: SlotRow['answer']): SlotRow => ({
    slot,
    answer,
    lineId: 'k',
    kind: null,
    text: '',
    productId: null,
    quantity: 1,
    required: true,
    needs: null,
  })
  const build = {
    rows: [row('hold_water', 'kit'), row('cover', 'in_kit'), row('filter', 'buy'), row('heat', 'in_kit'), row('light', 'buy')],
  } as AssembledBuild
  it('runs over neighbouring slots and breaks where the kit leaves one out', () => {
    expect(slotCells(build, ['hold_water', 'cover', 'filter', 'heat', 'light']).map((cell) => cell.bracket)).toEqual([
      'first',
      'last',
      null,
      'only',
      null,
    ])
    expect(slotCells(build, ['hold_water', 'cover', 'heat']).map((cell) => cell.bracket)).toEqual(['first', 'middle', 'last'])
  })
})

it('a build without a tank has one thing to say, and a build with one says nothing of it', () => {
  const view = sampleView(1, sampleDraft)
  const report = assembleBuild({ ...view, draft: { ...sampleDraft, builds: [{ id: 'a', name: '', why: '', lines: [] }] } }, 0).report
  // Seven checks of every build wait for the tank; what is left needs none.
  expect(report.findings.filter(needsTank)).toHaveLength(7)
  const others = report.findings.filter((finding) => !needsTank(finding))
  expect(others.filter((finding) => /tank is chosen/.test(sayPhrase(finding.reason, US)))).toEqual([])
})

describe('working the builds out', () => {
  const view = sampleView(1, sampleDraft)
  const inputs: QuoteInputs = {
    draft: view.draft,
    products: view.products,
    stores: view.stores,
    prices: view.prices,
    install: view.install,
    asOf: view.asOf,
  }
  const counted = () => {
    const worked: number[] = []
    const assemble = makeAssembler((_, index) => {
      worked.push(index)
      return { id: String(index) } as AssembledBuild
    })
    return { worked, assemble }
  }
  it('costs the edited build alone', () => {
    const { worked, assemble } = counted()
    const before = assemble(inputs)
    const after = assemble({ ...inputs, draft: editDraft(inputs.draft, { do: 'remove_line', buildId: 'b', lineId: 'b-mat' }) })
    expect(worked).toEqual([0, 1, 1])
    expect(after[0]).toBe(before[0])
  })
  it('costs nothing when only a title changes, and every build when the room does', () => {
    const { worked, assemble } = counted()
    assemble(inputs)
    assemble({ ...inputs, draft: editDraft(inputs.draft, { do: 'title', title: 'Another' }) })
    expect(worked).toEqual([0, 1])
    assemble({ ...inputs, draft: editDraft(inputs.draft, { do: 'exact', change: { warmestRoomC: 30 } }) })
    expect(worked).toEqual([0, 1, 0, 1])
  })
})
