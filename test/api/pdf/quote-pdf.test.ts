import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closePdfWorker, renderQuotePdf, type QuotePdfInput } from '../../../api/pdf/render-quote-pdf.ts'
import { sayMoney } from '../../../core/money.ts'
import { sampleRevision, type SampleOptions } from '../../support/sample-revision.ts'
import { hasCommand, readPdf, runOnPdf, type ReadPdf } from './pdf-reader.ts'

const LINKS = {
  quote: 'https://tarnwick.example/q/q7d2Kx0mR2vN8aYtB3cJ5eWf',
  setup: 'https://tarnwick.example/s/Zp4bQ1nT6uXo9LgHrVdMkC3w',
  thisComputerOnly: false,
}

function inputOf(options: SampleOptions = {}, change: Partial<QuotePdfInput> = {}): QuotePdfInput {
  return { document: sampleRevision(options), customerName: 'Ines Tillish', paper: 'a4', links: LINKS, draft: false, ...change }
}
const make = async (options: SampleOptions = {}, change: Partial<QuotePdfInput> = {}): Promise<ReadPdf> =>
  readPdf(await renderQuotePdf(inputOf(options, change)))

afterAll(closePdfWorker)

describe('a quote of three builds', () => {
  let bytes: Uint8Array
  let read: ReadPdf
  beforeAll(async () => {
    bytes = await renderQuotePdf(inputOf())
    read = await readPdf(bytes)
    // The first document of a fresh worker, and eleven pages read back: on a busy machine longer than the usual wait.
  }, 60_000)

  it('holds every tier total, goods, delivery and tax that the rules gave', () => {
    for (const { cost } of sampleRevision().builds) {
      for (const tier of [cost.full, cost.today, cost.bestSeen]) {
        if (!tier.complete) throw new Error('the sample is complete')
        expect(read.pages[0]).toContain(sayMoney(tier.totalMinor, 'USD'))
      }
      if (!cost.today.complete) throw new Error('the sample is complete')
      for (const part of [cost.today.goodsMinor, cost.today.deliveryMinor, cost.today.taxMinor])
        expect(read.pages[0]).toContain(sayMoney(part, 'USD', { symbol: false }))
    }
  })

  it('says number, version, date and page of pages on every page', () => {
    read.pages.forEach((page, index) =>
      expect(page).toContain(`Quote 2026-0147, version 1 Oct 20, 2026 · page ${index + 1} of ${read.pages.length}`),
    )
  })

  it('has on page one what a customer decides on', () => {
    for (const words of [
      'Tarnwick Aquarium Club',
      'For Ines Tillish',
      'Sat, Oct 31, 2026',
      'we suggest',
      'Clear edges',
      'One box',
      'The findings that matter',
      'Not included:',
      'never an approval',
      'not an offer by the store',
    ])
      expect(read.pages[0]).toContain(words)
  })

  it('prints the addresses of its links in words, broken over lines but with nothing added', () => {
    expect(read.pages[0]?.replaceAll(' ', '')).toContain('tarnwick.example/q/q7d2Kx0mR2vN8aYtB3cJ5eWf')
    expect(read.text.replaceAll(' ', '')).toContain('tarnwick.example/s/Zp4bQ1nT6uXo9LgHrVdMkC3w')
    expect(read.text).not.toContain('\u200b')
  })

  it('has on page one what each build includes, with goods, delivery and tax said once', () => {
    expect(read.pages[0]).toContain('What is included')
    expect(read.pages[0]).toContain('Wendlemere Clear 90')
    expect(read.pages[0]?.match(/Delivery \d/g)).toHaveLength(1)
    expect(read.pages[1]).not.toContain('What is included')
  })

  it('tells a kit in one row and its parts without their prices', () => {
    expect(read.pages[0]).toContain('Wendlemere Start 80 kit')
    expect(read.pages[0]).toContain('in the kit: hinged lid with light')
    expect(read.pages[0]).not.toContain('Start tank 80')
    expect(read.text).toContain('Tank: in the kit: Start tank 80')
  })

  it('shrinks what fits to a row with value and limit, its assumptions told once below', () => {
    expect(read.text).toContain('Electrical load 357 W at most 1,440 W')
    expect(read.text).not.toContain('All at once on a circuit')
    expect(read.text).not.toContain('no value')
  })

  it('tells what does not fit with reason, action, caution, assumptions and source', () => {
    for (const words of [
      'takes the water to 97.5',
      'Do: Take two heaters',
      'Caution: Unplug everything',
      'Assumed: warmest room',
      'Would settle it: rated load',
    ])
      expect(read.text).toContain(words)
  })

  it('tells how each check was reckoned: what went in once, with where it comes from, then formula and source', () => {
    expect(read.text).toContain('How it was reckoned, build A')
    expect(read.text).toMatch(/Entered with the products .*Filter \(Pellick C-1200 canister\) .*rated flow/)
    expect(read.text).toMatch(/Assumed: what is usual .*Coldest room temperature/i)
    expect(read.text).toMatch(/Electrical load 357 W at most 1,440 W Watts of all that is plugged in.* Goes in: .*circuit voltage/)
  })

  it('gives each line its store, the day it was seen and the last day of its sale', () => {
    expect(read.text).toContain('Pellick C-1200 canister Upriver sale, one report Oct 18 Oct 31 119.99 full 149.99')
  })

  it('names the part that fills a slot, and a source with its kind once', () => {
    for (const part of ['Thermometer', 'Conditioner', 'Power strip', 'Water tests']) expect(read.text).toContain(part)
    for (const slot of ['Hold water', 'Feed the cycle', 'Protect the circuit']) expect(read.text).not.toContain(slot)
    expect(read.text).toContain('Published. heat balance, EN ISO 6946 and ASHRAE evaporation.')
    expect(read.text).toContain('Published. NEC 210.20(A), continuous load.')
    expect(read.text).not.toMatch(/Source,|common practice\): common practice/)
  })

  it('never calls a floor finding one that fits', () => {
    expect(read.text).toContain('ask before you place it')
    expect(read.text).toContain('Screening only, never an approval')
    expect(read.text).not.toMatch(/Floor \(fits\)/)
  })

  it('carries the eight cautions, running costs, the computed checklist and the log', () => {
    for (const words of [
      'Running costs',
      'Bleach and ammonia',
      'The makers come first',
      'Startup checklist, build A',
      '0.55 fl oz (16.2 mL) of Stillwell 500 mL',
      '1.2 g of Stillwell ammonium chloride',
      'Water-test log',
      'Nitrite, mg/L',
    ])
      expect(read.text).toContain(words)
  })

  it('tells a caution in full at its first step and by name at the next ones', () => {
    const checklist = read.text.slice(read.text.indexOf('Startup checklist'))
    expect(checklist.match(/Caution: Unplug everything before hands go in\./g)).toHaveLength(1)
    expect(checklist).toMatch(/Caution: Hands in the water, as in step \d+\./)
  })

  it('is tagged: a title, a language, headings, tables, and words for every picture', () => {
    expect(read.title).toBe('Quote 2026-0147, version 1, Tarnwick Aquarium Club')
    expect(read.language).toBe('en')
    for (const role of ['H1', 'H2', 'H3', 'H4', 'Table', 'TH', 'Figure']) expect(read.roles).toContain(role)
    expect(read.roles.length).toBeGreaterThan(500)
    expect(read.alts).toContain('QR code to this quote')
    expect(read.alts.filter((alt) => alt.startsWith('Build '))).toHaveLength(3)
  })

  it('embeds Archivo and Besley and nothing else', () => {
    expect(read.fonts).toEqual(['Archivo-Bold', 'Archivo-Regular', 'Archivo-SemiBold', 'Besley-SemiBold'])
  })

  it.skipIf(!hasCommand('pdffonts'))('embeds nothing else in the eyes of pdffonts either', () => {
    const families = runOnPdf('pdffonts', [], bytes)
      .split('\n')
      .slice(2)
      .filter((line) => line !== '')
    expect(families.length).toBeGreaterThan(0)
    for (const line of families) expect(line).toMatch(/^[A-Z]{6}\+(Archivo|Besley)-\w+ .* yes yes yes /)
  })

  it.skipIf(!hasCommand('qpdf'))('is sound by qpdf --check', () => {
    expect(runOnPdf('qpdf', ['--check'], bytes)).toContain('No syntax or stream encoding errors found')
  })

  it('comes out with the same bytes from the same input, from another thread too', async () => {
    await closePdfWorker()
    expect(Buffer.compare(bytes, await renderQuotePdf(inputOf()))).toBe(0)
  })
})

describe('paper and builds', () => {
  it.each([
    ['a4', 595, 842],
    ['letter', 612, 792],
  ] as const)('prints on %s', async (paper, width, height) => {
    const { sizes } = await make({ builds: 2 }, { paper })
    for (const size of sizes) expect(size).toEqual({ width, height })
  })

  it.each([1, 2, 3, 4] as const)(
    'keeps the decision of %d builds on page one of the smaller sheet, with names as long as they get',
    async (builds) => {
      const { pages } = await make({ builds, longNames: true }, { paper: 'letter' })
      for (const words of ['Today', 'We suggest A', 'The findings that matter', 'Not included:', 'never an approval'])
        expect(pages[0]).toContain(words)
      expect(pages.join(' ')).toContain('What is included')
    },
  )

  it.each(['a4', 'letter'] as const)('holds three builds with what they include on page one of %s', async (paper) => {
    const { pages } = await make({}, { paper })
    for (const words of ['What is included', 'Goods', 'We suggest A', 'Not included:', 'never an approval'])
      expect(pages[0]).toContain(words)
  })

  it.each([
    [1, 'letter'],
    [2, 'a4'],
    [3, 'letter'],
  ] as const)('leaves no page of %d builds on %s nearly empty', async (builds, paper) => {
    const { pages } = await make({ builds }, { paper })
    expect(pages.length).toBeLessThanOrEqual(11)
    for (const page of pages) if (!page.includes('Water-test log')) expect(page.length, page).toBeGreaterThan(900)
  })

  it('decides first where page one has no room for all that is included, which begins under it and goes on with its sums', async () => {
    const { pages } = await make({ builds: 4, longNames: true }, { paper: 'letter' })
    expect(pages[0]).toContain('with delivery and tax, follows.')
    expect(pages[0]).not.toContain('Goods')
    expect(pages.slice(0, 2).join(' ')).toMatch(/We suggest [\s\S]*What is included/)
    expect(pages.slice(1, 4).join(' ')).toContain('Goods')
  })

  it('tells the accepted build in full and sets that one up', async () => {
    const { text } = await make({}, { letter: 'C' })
    expect(text).toContain('Sizing report, build C')
    expect(text).toContain('Startup checklist, build C')
  })

  it('prints no total where a line has no price, and says which', async () => {
    const { pages } = await make({ incomplete: true, builds: 1 })
    expect(pages[0]).toContain('no total: Torvane 75 W has no price')
    expect(pages[0]).not.toMatch(/\$1,\d{3}\.\d{2}/)
    expect(pages[1]).toContain('no price')
  })

  it('answers for its own prices in a store', async () => {
    const { pages } = await make({ mode: 'store', builds: 1 })
    expect(pages[0]).not.toContain('not an offer')
    expect(pages[0]).toContain('held until the day this quote stands')
  })
})

describe('drafts, links and erased names', () => {
  it('marks a draft on every page', async () => {
    const { pages } = await make({ builds: 1 }, { draft: true })
    for (const page of pages) expect(page).toContain('Draft, not issued')
  })

  it('prints no code and no address where links are off', async () => {
    const { text, alts } = await make({ builds: 1 }, { links: null })
    expect(text).not.toContain('tarnwick.example')
    expect(alts.filter((alt) => alt.includes('QR'))).toEqual([])
  })

  it('says so where a link opens on this computer only', async () => {
    const { pages } = await make(
      { builds: 1 },
      { links: { quote: 'http://localhost:8080/q/abc', setup: 'http://localhost:8080/s/abc', thisComputerOnly: true } },
    )
    expect(pages[0]).toContain('this computer only')
    expect(pages[0]?.replaceAll(' ', '')).toContain('http://localhost:8080/q/abc')
  })

  it('says that a name was erased', async () => {
    const { pages } = await make({ builds: 1 }, { customerName: null })
    expect(pages[0]).toContain('The customer’s name was erased')
  })
})

describe('hostile text', () => {
  const markup = '#eval("1") #panic() $x^2$ `raw` *b* _i_ <label> @ref \\ [ ] { } = heading // "quoted"'
  const cases: Array<[string, string]> = [
    ['markup and code', markup],
    ['a word of 300 letters', 'x'.repeat(300)],
    ['emoji', 'Fish \u{1f41f}\u{1f469}\u200d\u{1f52c} tank'],
    ['text that runs right to left', '\u05d0\u05e7\u05d5\u05d5\u05e8\u05d9\u05d5\u05dd \u202e evil \u202c \u0627\u0644\u0633\u0645\u0643'],
    ['half a surrogate and control characters', 'half \ud83d and \u0000\u0007\u001b[31m'],
    ['nothing at all', ''],
  ]
  it.each(cases)('prints %s as text, in our own fonts', async (_, hostile) => {
    const { fonts, roles, pages } = await make({ builds: 2, hostile }, { customerName: hostile })
    expect(fonts.filter((font) => !/^(Archivo|Besley)-/.test(font))).toEqual([])
    expect(roles).toContain('H1')
    expect(pages.join(' ')).toContain('Sat, Oct 31, 2026')
  })

  it('shows markup as it was typed', async () => {
    const { text } = await make({ builds: 1, hostile: markup })
    expect(text).toContain(markup)
  })
})

describe('a thread that hangs', () => {
  it('is ended after its time, and the next document gets a new one', async () => {
    await closePdfWorker()
    await expect(renderQuotePdf(inputOf({ builds: 1 }), { timeoutMs: 1 })).rejects.toThrow('longer than 1 ms')
    expect((await renderQuotePdf(inputOf({ builds: 1 }))).length).toBeGreaterThan(10_000)
  })

  it('refuses what it cannot make in words, and goes on', async () => {
    const empty = { ...sampleRevision({ builds: 1 }), builds: [] }
    await expect(renderQuotePdf(inputOf({}, { document: empty }))).rejects.toThrow('at least one build')
    expect((await renderQuotePdf(inputOf({ builds: 1 }))).length).toBeGreaterThan(10_000)
  })

  it('makes documents that are asked for at once one after the other', async () => {
    const made = await Promise.all([1, 2, 1].map((builds) => renderQuotePdf(inputOf({ builds: builds as 1 | 2 }))))
    expect(Buffer.compare(made[0]!, made[2]!)).toBe(0)
    expect(Buffer.compare(made[0]!, made[1]!)).not.toBe(0)
  })
})
