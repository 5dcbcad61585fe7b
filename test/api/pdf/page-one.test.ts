import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, describe, expect, it } from 'vitest'
import { waysToLayOut } from '../../../api/pdf/fit-page-one.ts'
import { paperFaces } from '../../../api/pdf/fonts.ts'
import { firstAction, firstFindings, firstQuestions } from '../../../api/pdf/findings-on-paper.ts'
import { firstSentence, hasFigure, sentenceWith } from '../../../api/pdf/first-sentence.ts'
import { quotePaper } from '../../../api/pdf/quote-paper.ts'
import { closePdfWorker, renderQuotePdf, type QuotePdfInput } from '../../../api/pdf/render-quote-pdf.ts'
import { linesOf } from '../../../api/pdf/text-width.ts'
import { tellerOf } from '../../../api/pdf/teller.ts'
import type { AssembledBuild } from '../../../core/quote/revision.ts'
import type { Check, Verdict } from '../../../core/sizing/finding.ts'
import { makeFinding } from '../../../core/sizing/make-finding.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { quantity, type Phrase } from '../../../core/units/quantity.ts'
import { sampleRevision, type SampleOptions } from '../../support/sample-revision.ts'

const faces = paperFaces()
const inputOf = (options: SampleOptions, paper: 'a4' | 'letter' = 'a4'): QuotePdfInput => ({
  document: sampleRevision(options),
  customerName: 'Ines Tillish',
  paper,
  links: null,
  draft: false,
})

afterAll(closePdfWorker)

/** Texts of page one as pdf.js places them: how wide, how large, how high above the foot of the sheet. */
async function placed(input: QuotePdfInput): Promise<Array<{ text: string; width: number; size: number; y: number }>> {
  const document = await getDocument({ data: await renderQuotePdf(input), verbosity: VerbosityLevel.ERRORS }).promise
  const { items } = await (await document.getPage(1)).getTextContent()
  const found = items.flatMap((item) =>
    'str' in item && item.str.trim() !== ''
      ? [{ text: item.str, width: item.width, size: Number(item.transform[3]), y: Number(item.transform[5]) }]
      : [],
  )
  await document.destroy()
  return found
}

describe('the width of a text', () => {
  it('is what another reader finds in the page, to one per cent', async () => {
    const items = await placed(inputOf({ builds: 1 }))
    const title = items.find(({ text }) => text.startsWith('One tank'))
    const need = items.find(({ text }) => text.startsWith('Asked for'))
    if (!title || !need) throw new Error('the page has its title and its need')
    expect(faces.title(title.text, title.size) / title.width).toBeCloseTo(1, 1.7)
    expect(faces.regular(need.text, need.size) / need.width).toBeCloseTo(1, 1.7)
  })

  it('breaks at spaces and in long runs, and never has less than a line', () => {
    const widthOf = (text: string, size: number): number => text.length * size
    expect(linesOf('', 1, 10, widthOf)).toBe(1)
    expect(linesOf('aaaa bbbb cccc', 1, 9, widthOf)).toBe(2)
    expect(linesOf('aaaa bbbb cccc', 1, 8, widthOf)).toBe(3)
    expect(linesOf('aaaaaaaaa\u200bbbbbbbbbb', 1, 10, widthOf)).toBe(2)
  })
})

describe('page one', () => {
  it.each([
    [{}, 'a4'],
    [{}, 'letter'],
    [{ builds: 1 }, 'letter'],
    [{ builds: 2 }, 'a4'],
    [{ incomplete: true }, 'letter'],
  ] as const)('of %o on %s carries nothing smaller than 8 pt and keeps its margins', async (options, paper) => {
    const items = await placed(inputOf(options, paper))
    for (const { text, size, y } of items) {
      expect(size, text).toBeGreaterThanOrEqual(7.99)
      expect(y, text).toBeGreaterThan(12 * (72 / 25.4))
    }
  })

  it('takes the widest way that holds, and only closer ones after it', () => {
    const { paper, art } = quotePaper(inputOf({ builds: 2 }))
    const ways = waysToLayOut(paper, art, faces)
    const sizes = ways.filter(({ layout }) => layout.together).map(({ layout }) => layout.text)
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a))
    expect(ways.at(-1)?.layout).toMatchObject({ together: false, text: 8 })
  })

  it('says which sale prices are over before the quote is, in the builds that have them', () => {
    const input = inputOf({ builds: 2 })
    const endingOn = (holdsUntil: string): string => {
      const builds = input.document.builds.map((build, index) => ({
        ...build,
        cost: {
          ...build.cost,
          lines: build.cost.lines.map((line, at) => ({
            ...line,
            lastDayStated: true,
            holdsUntil: index === 0 && at < 2 ? holdsUntil : null,
          })),
        },
      }))
      return quotePaper({ ...input, document: { ...input.document, builds } }).paper.first.priceNote
    }
    // The sample stands until Oct 31.
    expect(endingOn('2026-10-25')).toMatch(/^In A, sale prices of 2 parts hold only until Oct 25\. Every price/)
    expect(endingOn('2026-10-31')).toMatch(/^Every price/)
  })

  it('holds the prices of a store but for the sales that end before, and says the most it then comes to', () => {
    const noteOf = (builds: 1 | 2, full?: { complete: false; missing: [] }): string => {
      const input = inputOf({ mode: 'store', builds })
      const ending = input.document.builds.map(({ cost, ...build }) => ({
        ...build,
        cost: {
          ...cost,
          full: full ?? {
            ...cost.today,
            complete: true as const,
            goodsMinor: 0,
            deliveryMinor: 0,
            servicesMinor: 0,
            taxMinor: 0,
            totalMinor: 123_450,
          },
          lines: cost.lines.map((line, at) => ({ ...line, lastDayStated: true, holdsUntil: at < 2 ? '2026-10-25' : null })),
        },
      }))
      return quotePaper({ ...input, document: { ...input.document, builds: ending } }).paper.first.priceNote
    }
    expect(noteOf(1)).toMatch(
      /, held until the day this quote stands, except sale prices that end before: 2 parts until Oct 25\. Those parts then cost their full price, and the total is at most \$1,234\.50\.$/,
    )
    expect(noteOf(2)).toMatch(
      /: 2 parts in A until Oct 25, 2 parts in B until Oct 25\. .* the total is at most \$1,234\.50 in A, at most \$1,234\.50 in B\.$/,
    )
    expect(noteOf(2, { complete: false, missing: [] })).toMatch(/and the total is not known\.$/)
  })

  it('sets a long title smaller before it takes a second line', () => {
    const size = (title: string): number => {
      const { paper, art } = quotePaper(inputOf({ builds: 1, hostile: title }))
      return waysToLayOut(paper, art, faces)[0]?.layout.title ?? 0
    }
    expect(size('One tank')).toBe(19)
    expect(size('A tank of about a metre for a cool living room')).toBeLessThan(19)
    expect(size('x'.repeat(50).replaceAll('xxxxx', 'xxxx '))).toBeGreaterThanOrEqual(12)
  })
})

describe('the findings that matter', () => {
  const buildWith = (letter: 'A' | 'B', suggested: boolean, checks: ReadonlyArray<readonly [Check, Verdict]>): AssembledBuild => {
    const [build] = sampleRevision({ builds: 1 }).builds
    const findings = checks.map(([check, verdict]) => toldFinding(makeFinding(check, { verdict, reason: ['So it is.'], action: null })))
    return { ...build!, letter, suggested, report: { ...build!.report, findings, pageOne: findings.map((_, index) => index) } }
  }
  const told = (builds: AssembledBuild[]) =>
    firstFindings(builds, tellerOf(sampleRevision({ builds: 1 }))).map(({ title, letters, verdict }) => [title, letters, verdict])
  const WRONG = [['heater_stuck', 'does_not_fit'], ['heater_holds', 'does_not_fit'], ['filter_flow', 'does_not_fit']] as const // prettier-ignore

  it('have one of the build that is suggested, whatever is wrong with the others', () => {
    const suggested = buildWith('A', true, [['floor_load', 'marginal'], ['lid', 'marginal']]) // prettier-ignore
    expect(told([suggested, buildWith('B', false, WRONG)])).toEqual([
      ['Heater stuck on', 'B', 'does_not_fit'],
      ['Heat in the coldest room', 'B', 'does_not_fit'],
      ['Floor', 'A', 'marginal'],
    ])
    // Nothing is wrong with it, or one of the three is its own: what can hurt first stands.
    const third = ['Filter flow', 'B', 'does_not_fit']
    expect(told([buildWith('A', true, []), buildWith('B', false, WRONG)])[2]).toEqual(third)
    expect(told([buildWith('A', true, [['heater_stuck', 'does_not_fit'], ['lid', 'marginal']]), buildWith('B', false, WRONG)])).toEqual([
      ['Heater stuck on', 'A, B', 'does_not_fit'],
      ['Heat in the coldest room', 'B', 'does_not_fit'],
      third,
    ]) // prettier-ignore
  })
})

describe('the figure of what is past its limit', () => {
  const percent = (value: number) => quantity(value, 'percent', 0)
  const sentenceOf = (value: number, reason: Phrase): string | undefined => {
    const [build] = sampleRevision({ builds: 1 }).builds
    const limit = { kind: 'at_most', high: percent(50) } as const
    const finding = toldFinding(makeFinding('floor_load', { verdict: 'marginal', value: percent(value), limit, reason, action: null }))
    const report = { ...build!.report, findings: [finding], pageOne: [0] }
    return firstFindings([{ ...build!, report }], tellerOf(sampleRevision({ builds: 1 })))[0]?.sentence
  }
  const WEIGHS = 'Filled to the rim it weighs much. '

  it('stands on page one, in its own sentence or beside the first', () => {
    expect(sentenceOf(143, [WEIGHS, 'A joist takes ', percent(143), ' in bending. It sags.'])).toBe('A joist takes 143 % in bending.')
    expect(sentenceOf(143, [WEIGHS, 'A joist takes far more.'])).toBe(`${WEIGHS}Value 143 %, limit at most 50 %.`)
    // Within its limit what it weighs is what matters.
    expect(sentenceOf(43, [WEIGHS, 'A joist takes ', percent(43), ' in bending.'])).toBe(WEIGHS.trim())
  })
  it('is not found in the end of a longer one', () => {
    expect(hasFigure('A joist takes 143 %.', '43 %')).toBe(false)
    expect(hasFigure('One takes 143 %, another 43 %.', '43 %')).toBe(true)
    expect(hasFigure('One takes 143 %, another 243 %.', '43 %')).toBe(false)
    expect(sentenceWith('It takes 143 %. It may take 43 %.', '43 %')).toBe('It may take 43 %.')
    expect(sentenceWith('It takes 143 %.', '9 %')).toBeUndefined()
  })
})

describe('what to find out first', () => {
  const asking = (texts: ReadonlyArray<readonly [string, Check]>) =>
    sampleRevision({ builds: 1 }).builds.map((build) => ({
      ...build,
      report: {
        ...build.report,
        questions: texts.map(([text, check]) => ({
          text,
          input: text,
          place: { at: 'slot' as const, slot: 'heat' as const },
          checks: [check],
        })),
      },
    }))[0]!

  it('is at most three questions over all builds, each once, what can hurt soonest in front', () => {
    const first = asking([['How deep?', 'substrate_depth'], ['How warm?', 'warm_room']]) // prettier-ignore
    const second = asking([['How warm?', 'heater_stuck'], ['What floor?', 'floor_load'], ['Which lid?', 'lid']]) // prettier-ignore
    expect(firstQuestions([first, second])).toEqual(['How warm?', 'What floor?', 'Which lid?'])
  })

  it('starts with what keeps a check of harm from fitting', () => {
    const build = asking([['What else runs?', 'electrical_load'], ['What joists?', 'floor_load']]) // prettier-ignore
    const [one] = build.report.findings
    if (one === undefined) throw new Error('the sample has findings')
    const judged = (verdict: Verdict, check: Check) => ({ ...one, check, verdict })
    const of = (load: Verdict) => ({
      ...build,
      report: { ...build.report, findings: [judged(load, 'electrical_load'), judged('not_known', 'floor_load')] },
    })
    expect(firstQuestions([of('fits')])).toEqual(['What joists?', 'What else runs?'])
    expect(firstQuestions([of('marginal')])).toEqual(['What else runs?', 'What joists?'])
  })

  it('is nothing in what was issued before it was asked', () => {
    expect(firstQuestions(sampleRevision({ builds: 2 }).builds)).toEqual([])
  })
})

describe('a finding in short', () => {
  it.each([
    ['The tank weighs 450.5 lb. Decor comes on top.', 'The tank weighs 450.5 lb.'],
    ['It takes 90 W. The rest is spare.', 'It takes 90 W.'],
    ['Filter No. 4 by St. Ann leaks. Replace it.', 'Filter No. 4 by St. Ann leaks.'],
    ['One sentence only', 'One sentence only'],
    ['', ''],
  ])('of "%s" is its first sentence', (text, first) => expect(firstSentence(text)).toBe(first))

  it('does what would do where no single part would', () => {
    expect(firstAction('No power holds both. What would: two heaters of 60 W. Ask us.')).toBe('Two heaters of 60 W.')
    expect(firstAction('Take two heaters. Ask us.')).toBe('Take two heaters.')
  })
})
