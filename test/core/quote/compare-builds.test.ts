import { CHECK_TITLES } from '../../../core/sizing/check-titles.ts'
import { describe, expect, it } from 'vitest'
import { compareBuilds } from '../../../core/quote/compare-builds.ts'
import type { ByDate } from '../../../core/pricing/by-date.ts'
import type { AssembledBuild } from '../../../core/quote/revision.ts'
import { sampleInputs, sampleRevision } from '../../support/sample-revision.ts'

const { builds } = sampleRevision()
const said = { currency: 'USD', stores: sampleInputs().stores, thisYear: 2026 }
const first = builds[0]!

/** The first build with one thing otherwise. */
const changed = (change: Partial<AssembledBuild>): AssembledBuild[] => [{ ...first, ...change }, ...builds.slice(1)]
const changesOfFirst = (after: AssembledBuild[]) => compareBuilds(builds, after, said)[0]?.changes

describe('two versions side by side', () => {
  it('that are the same have nothing to tell', () => {
    expect(compareBuilds(builds, structuredClone(builds), said).flatMap((build) => build.changes)).toEqual([])
  })

  it('tell another product, another count and what was taken out by what was and what is', () => {
    const bought = first.rows.find((row) => row.answer === 'buy' && row.slot !== 'hold_water')!
    const other = first.rows.map((row) => (row === bought ? { ...row, text: '3 × Quarrick Slim' } : row))
    expect(changesOfFirst(changed({ rows: other }))).toMatchObject([{ part: 'line', was: bought.text, now: '3 × Quarrick Slim' }])
    const without = first.rows.filter((row) => row !== bought)
    expect(changesOfFirst(changed({ rows: without }))).toMatchObject([{ part: 'line', was: bought.text, now: 'nothing' }])
  })

  it('tell a price where the same product stands in both, and the total with what it is more or less', () => {
    const line = first.cost.lines.find((one) => one.unitTodayMinor !== null)!
    const lines = first.cost.lines.map((one) => (one === line ? { ...one, unitTodayMinor: one.unitTodayMinor! + 150 } : one))
    const { today } = first.cost
    if (!today.complete) throw new Error('the sample has a total')
    const cost = { ...first.cost, lines, today: { ...today, totalMinor: today.totalMinor + 159 } }
    const [price, total] = changesOfFirst(changed({ cost })) ?? []
    const dollars = (minor: number) => new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100)
    expect(price).toMatchObject({ part: 'price' })
    expect(price?.was).toContain(dollars(line.unitTodayMinor!))
    expect(price?.now).toContain(dollars(line.unitTodayMinor! + 150))
    expect(total).toMatchObject({ part: 'total', was: dollars(today.totalMinor), now: `${dollars(today.totalMinor + 159)}, $1.59 more` })
  })

  it('never tell a total with a hole in it', () => {
    const cost = { ...first.cost, today: { complete: false as const, missing: [] } }
    expect(changesOfFirst(changed({ cost }))).toMatchObject([{ part: 'total', now: 'no total' }])
  })

  it('tell what is expected by the day of the need where it is otherwise, and that the record had learnt more where that is why', () => {
    const by = { until: '2026-12-20', learnedOn: '2026-11-26', expectedMinor: 81_524, low10Minor: 78_587, high90Minor: 83_930, waits: 2 }
    const { byDate: _told, ...plain } = first
    const expected = (before: ByDate | null, after: ByDate | null | undefined) =>
      compareBuilds([{ ...plain, byDate: before }], [{ ...plain, ...(after !== undefined && { byDate: after }) }], said)[0]?.changes
    expect(expected(by, { ...by })).toEqual([])
    expect(expected(by, { ...by, learnedOn: '2026-11-27', expectedMinor: 81_300 })).toEqual([
      {
        part: 'expected',
        what: 'Expected total',
        was: 'about $815 by Dec 20, $786 to $839 in 8 of 10 cases; from what the record had taught by Nov 26',
        now: 'about $813 by Dec 20, $786 to $839 in 8 of 10 cases; from what the record had taught by Nov 27',
      },
    ])
    expect(expected(by, { ...by, until: '2026-12-28' })).toMatchObject([{ now: 'about $815 by Dec 28, $786 to $839 in 8 of 10 cases' }])
    expect(expected(null, by)).toMatchObject([{ was: 'nothing' }])
    expect(expected({ ...by, expectedMinor: 90_000 }, undefined), 'not known yet').toEqual([])
  })

  it('tell a check whose verdict is another, one that is new and one that is gone', () => {
    const [finding, ...others] = first.report.findings
    const verdict = finding!.verdict === 'fits' ? ('does_not_fit' as const) : ('fits' as const)
    const worse = { ...first.report, findings: [{ ...finding!, verdict, wording: undefined }, ...others] }
    expect(changesOfFirst(changed({ report: worse }))).toMatchObject([{ part: 'check', what: CHECK_TITLES[finding!.check] }])
    const fewer = { ...first.report, findings: others }
    expect(changesOfFirst(changed({ report: fewer }))).toMatchObject([
      { part: 'check', what: CHECK_TITLES[finding!.check], now: 'not checked' },
    ])
  })

  it('tell a build that is new and one that is gone, and follow one to another letter', () => {
    const added: AssembledBuild = { ...first, id: 'new', letter: 'D', name: 'Late thought' }
    expect(compareBuilds(builds, [...builds, added], said).at(-1)).toMatchObject({
      letter: 'D',
      changes: [{ now: 'is new' }, { part: 'total' }],
    })
    const rest = builds.slice(1).map((build, index) => ({ ...build, letter: builds[index]!.letter }))
    const told = compareBuilds(builds, rest, said)
    expect(told.at(-1)).toMatchObject({ letter: first.letter, changes: [{ now: 'was taken out' }] })
    expect(told[0]?.changes).toMatchObject([{ what: 'Letter', was: builds[1]!.letter, now: first.letter }])
  })
})
