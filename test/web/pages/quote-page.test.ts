import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { openSlots, sayOpenSlots } from '../../../core/quote/open-slots.ts'
import type { ToldFinding, Verdict } from '../../../core/sizing/finding.ts'
import { sayMoney } from '../../../core/money.ts'
import { quotePage } from '../../../web/pages/quote-page.ts'
import { quoteProps } from './sample-pages.ts'
import { sampleQuote } from './sample-quote.ts'

const marked = (change: Parameters<typeof quoteProps>[0] = {}): string => String(quotePage(quoteProps(change)))
/** As it is read: what sets a name apart from its sentence is not seen. */
const page = (change: Parameters<typeof quoteProps>[0] = {}): string => marked(change).replace(/<\/?bdi>/g, '')
const totals = sampleQuote().builds.map(({ cost }) => (cost.today.complete ? sayMoney(cost.today.totalMinor, 'USD') : ''))

describe('the quote as a customer decides on it', () => {
  it('says number, version, name, until when and by whom', () => {
    const html = page()
    for (const words of [
      'Quote 2026-0147, version 1',
      'for Ines Tillish',
      'Sat, Oct 31',
      'Bram Ockley',
      'We suggest this one.',
      'It meets every wish within the budget.',
    ])
      expect(html).toContain(words)
    expect(html).not.toMatch(/revision \d/i)
  })
  it('keeps the direction of what somebody wrote apart from the sentence it stands in', () => {
    const html = marked({
      customerName: 'נועה',
      state: 'accepted',
      answer: { revision: 1, answer: 'accepted', letter: 'A', note: 'עד שבת', at: '2026-10-22T10:00:00Z' },
    })
    for (const words of [', for <bdi>נועה</bdi>', '“<bdi>עד שבת</bdi>”', 'A: <bdi>Long and deep</bdi>', '<bdi>Bram Ockley</bdi> sees'])
      expect(html).toContain(words)
    expect(marked()).toContain('Accept A: <bdi>Long and deep</bdi>, $')
  })
  it('folds a drawing under the finding it belongs to, each with names of its own', () => {
    const html = marked()
    const folds = [
      ...html.matchAll(/<details class="drawing-fold"><summary>Show the drawing: ([^<]+)<\/summary><svg[^>]*aria-labelledby="([^"]+)"/g),
    ]
    expect(folds.length).toBeGreaterThan(0)
    expect(folds.map(([, name]) => name)).toContain('heat against the room')
    const ids = folds.map(([, , id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })
  it('shows the total of every build and offers to accept each by name and figure', () => {
    const html = page()
    expect(totals.every((total) => total.startsWith('$'))).toBe(true)
    for (const [index, total] of totals.entries())
      expect(html).toContain(`Accept ${'ABC'[index]}: ${['Long and deep', 'One box', 'Clear edges'][index]}, ${total}`)
  })
  it('says what is and what is not included, the cautions, and that prices are as seen', () => {
    const html = page()
    for (const words of ['Animals, plants and food', 'not an offer by the stores', 'screening only, never an approval'])
      expect(html).toContain(words)
    for (const caution of sampleQuote().cautions.slice(0, 1)) expect(html).toContain(caution.replaceAll("'", '&#39;'))
  })
  it('shows what should be known before deciding, each with its word', () => {
    const [build] = sampleQuote().builds
    const html = page()
    for (const index of build!.report.pageOne) expect(html).toContain(build!.report.findings[index]!.title)
  })
  it('says what the advisor noted on a line', () => {
    const document = sampleQuote()
    const row = document.builds[0]!.rows.find(({ answer }) => answer === 'buy')!
    row.lineNote = 'Ask for <the one> in the window'
    expect(page({ document })).toContain('Ask for &lt;the one&gt; in the window')
  })
  it('tells any two of three builds tier by tier, folded, without script', () => {
    const pairs = page().split('<details name="pair">').slice(1)
    expect(pairs.map((pair) => pair.match(/<summary>(.*?)<\/summary>/)?.[1])).toEqual(['A and B', 'A and C', 'B and C'])
    const fulls = sampleQuote().builds.map(({ cost: { full } }) => (full.complete ? full.totalMinor : NaN))
    const gap = (fulls[2] ?? NaN) - (fulls[1] ?? NaN)
    expect(pairs[2]).toContain(`<dd>${gap > 0 ? 'B' : 'C'} is ${sayMoney(Math.abs(gap), 'USD')} less</dd>`)
  })
  it('says an owned, a superfluous, a missing and a kit slot in words', () => {
    const html = page()
    for (const words of [
      'your oak sideboard (already owned)',
      'not needed: rimmed tank',
      'still missing',
      'Pellick C-1200 canister (in the kit)',
    ])
      expect(html).toContain(words)
  })
  it('says what a total does not hold, beside it and on the button that accepts it', () => {
    const html = page().replace(/<[^>]*>/g, '')
    const open = sampleQuote().builds.filter((build) => openSlots(build).length > 0)
    expect(open.length).toBeGreaterThan(0)
    for (const build of open) {
      const words = sayOpenSlots(build)
      expect(words).toMatch(/^without .+: not chosen$/)
      expect(html.split(words).length - 1, `build ${build.letter}: sums, choice, button`).toBeGreaterThanOrEqual(3)
    }
  })
  it('adds up its sums where prices hold their tax', () => {
    const document = sampleQuote()
    const [build] = document.builds
    if (!build?.cost.today.complete) throw new Error('The sample has no total')
    // 106.00 with 6 % in it holds 6.00 of tax.
    Object.assign(build.cost.today, { goodsMinor: 10_600, deliveryMinor: 0, taxMinor: 600, taxIncludedMinor: 600, totalMinor: 10_600 })
    expect(page({ document }).replace(/<[^>]*>/g, ' ')).toMatch(
      /Goods\s+106\.00\s+Delivery\s+0\.00\s+Tax[^−]*6\.00\s+Tax already in the prices\s+−6\.00\s+Today\s+\$106\.00/,
    )
  })
  it('never prints a total with a hole in it, and offers no button to accept it', () => {
    const html = page({ document: sampleQuote({ withoutPriceOf: 'kit-b' }) })
    expect(html).toContain('Wendlemere Start 55 kit has no price')
    expect(html).toContain('no total yet: ask first')
    expect(html).not.toContain('Accept B')
    expect(html).toMatch(/value="B" required disabled/)
  })
})

describe('a build that does not fit', () => {
  const quote = sampleQuote()
  const [first] = quote.builds
  const finding = (verdict: Verdict, number: number): ToldFinding => ({
    ...first!.report.findings[0]!,
    title: `Check ${number}`,
    verdict,
    reason: [`reason ${number}.`],
    action: { text: [`action ${number}.`] },
  })
  const findings = [1, 2, 3, 4, 5].map((number) => finding('does_not_fit', number))
  const report = {
    ...first!.report,
    findings: [...findings, finding('not_known', 6), finding('fits', 7)],
    pageOne: [0, 1, 2],
    counts: { does_not_fit: 5, not_known: 1, marginal: 0, fits: 1 },
  }
  const sound = { ...report, findings: [finding('fits', 8)], pageOne: [], counts: { does_not_fit: 0, not_known: 0, marginal: 2, fits: 1 } }
  const html = page({
    document: {
      ...quote,
      builds: [
        { ...first!, report },
        { ...quote.builds[1]!, report: sound },
      ],
    },
  })
  it('lists all of it, with its reason and what to do', () => {
    for (const number of [1, 2, 3, 4, 5, 6]) for (const words of ['Check', 'reason', 'action']) expect(html).toContain(`${words} ${number}`)
    expect(html).not.toContain('Check 7')
  })
  it('says so where it is chosen and by the button that accepts it, and of no other', () => {
    const form = html.slice(html.indexOf('class="accept"'))
    expect(form.match(/5 problems and 1 check not known/g)).toHaveLength(2)
    const [, warning] = /<div class="confirm confirm-A">([^]*?)<button/.exec(form) ?? []
    expect(warning?.replace(/<[^>]+>/g, '')).toContain(
      'A has 5 problems and 1 check not known, listed under how A fits. Accept only after asking your advisor.',
    )
    expect(html).toContain('id="fit-A"')
    expect(form, 'what is marginal is told beside the choice, and stops nobody').toContain(
      '<span class="option-problems">2 marginal</span>',
    )
    expect(/<div class="confirm confirm-B">([^]*?)<button/.exec(form)?.[1]).not.toContain('told')
  })
})

describe('sale prices that end before the quote does', () => {
  // The sample's sales end on Oct 25, the quote on Oct 31: two of build A, one of B, none of C.
  it('are said at each build and by the button that accepts it', () => {
    const html = page()
    expect(html.match(/Sale prices of 2 parts hold only until Oct 25\./g)).toHaveLength(2)
    expect(html.match(/The sale price of 1 part holds only until Oct 25\./g)).toHaveLength(2)
    expect(html).toContain('some sale prices end sooner')
  })
  it('are not mentioned where all prices hold to the last day', () => {
    expect(page({ document: { ...sampleQuote(), standsUntil: '2026-10-25' } })).not.toMatch(/sale prices?/i)
  })
})

describe('an accepted quote', () => {
  const answer = { revision: 1, answer: 'accepted', letter: 'A', note: '', at: '2026-10-23T02:30:00Z' } as const
  it('says what happens next and leads to the checklist', () => {
    const html = page({ state: 'accepted', answer })
    expect(html).toContain('Bram Ockley sees your answer and will get in touch')
    expect(html).toContain('<a class="btn" href="/s/token">Open your startup checklist</a>')
    expect(page({ state: 'accepted', answer, setupPath: null })).not.toContain('Open your startup checklist')
  })
  it('is dated by the day where the club is', () => {
    // 02:30 UTC on the 23rd is still the evening of the 22nd in New York.
    expect(page({ state: 'accepted', answer })).toContain('Accepted on Oct 22')
  })
})

describe('its states', () => {
  const form = 'action="/q/token/answer'
  it('can be answered while it stands, the last day included, and not after it', () => {
    expect(page({ today: '2026-10-31' })).toContain(form)
    const late = page({ today: '2026-11-01' })
    expect(late).not.toContain(form)
    expect(late).toContain('This quote stood until Sat, Oct 31.')
  })
  it.each([
    ['accepted', 'Accepted on Oct 22: A: Long and deep.'],
    ['declined', 'Declined on Oct 22.'],
    ['withdrawn', 'This quote was withdrawn.'],
    ['lapsed', 'This quote stood until'],
    ['draft', 'This quote is not issued.'],
  ] as const)('has no form once it is %s, and says so', (state, words) => {
    const html = page({
      state,
      answer: {
        revision: 1,
        answer: state === 'declined' ? 'declined' : 'accepted',
        letter: 'A',
        note: 'see you <Friday>',
        at: '2026-10-22T10:00:00Z',
      },
    })
    expect(html).toContain(words)
    expect(html).not.toContain(form)
    expect(html).not.toContain('<Friday>')
  })
  it('leads from an older version to the newest', () => {
    const html = page({ supersededBy: 3 })
    expect(html).toContain('Version 3 has taken its place.')
    expect(html).not.toContain(form)
  })
  it('drops the name once it was erased', () => {
    expect(page({ customerName: null })).not.toContain('Tillish')
  })
})

describe('a refused answer', () => {
  it('keeps what was typed and says at the field what was wrong', () => {
    const html = page({
      faults: [{ field: 'letter', message: 'Choose the build that you accept.' }],
      typed: { letter: 'C', note: 'on <Friday>' },
    })
    expect(html).toContain('Choose the build that you accept.')
    expect(html).toMatch(/value="C" required checked/)
    expect(html).toContain('on &lt;Friday&gt;')
  })
  it('is told even where the form is gone by now', () => {
    expect(page({ state: 'accepted', faults: [{ field: 'answer', message: 'It was answered a moment ago.' }] })).toContain(
      'It was answered a moment ago.',
    )
  })
  it('opens the form that was sent', () => {
    expect(page({ typed: { answer: 'declined', note: 'too big' } })).toMatch(/<details class="decline" open>[^]*too big/)
  })
})

describe('what every page without script keeps to', () => {
  const html = page()
  it('holds no script, no inline style and nothing to index', () => {
    expect(html).not.toMatch(/<script|\son\w+=|style="|javascript:/i)
    expect(html).toContain('content="noindex, nofollow"')
  })
  it('weighs at most 15 kB', () => {
    expect(gzipSync(html).length).toBeLessThanOrEqual(15_000)
  })
  it('has every id once', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1])
    expect(ids.length).toBeGreaterThan(5)
    expect(new Set(ids).size).toBe(ids.length)
  })
  it('escapes hostile words wherever a person can write them', () => {
    const hostile = '"><img src=x onerror=alert(1)>'
    const nasty = sampleQuote({ title: hostile, note: hostile })
    const [first] = nasty.builds
    const rows = first!.rows.map((row) => ({ ...row, text: hostile, needs: hostile }))
    const out = page({
      document: { ...nasty, advisor: hostile, builds: [{ ...first!, name: hostile, why: hostile, rows }], included: [hostile] },
      customerName: hostile,
    })
    expect(out).toContain('&quot;&gt;&lt;img')
    expect(out).not.toContain('<img')
  })
})
