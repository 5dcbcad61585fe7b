import { describe, expect, it } from 'vitest'
import type { AssembledBuild, RevisionDocument } from '../../../core/quote/revision.ts'
import { sinceBefore } from '../../../core/quote/since-before.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const before = sampleRevision()
const first = before.builds[0]!
const later = (builds: AssembledBuild[]): RevisionDocument => ({ ...before, revision: 2, builds })
const dollars = (minor: number) => new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100)

describe('what a later version says of the one before', () => {
  it('is that a build is as it was, where nothing is otherwise, whatever its checks say now', () => {
    const told = sinceBefore(before, later(before.builds.map((build) => ({ ...build, report: { ...build.report, findings: [] } }))))
    expect(told).toMatchObject({ builds: [], inShort: `${before.builds.map(({ letter }) => `${letter} as it was`).join(', ')}.` })
    expect(told?.version).toContain(`version ${before.revision} of `)
  })

  it('names what was added, what was taken out and what came in place of what', () => {
    const bought = first.rows.filter((row) => row.answer === 'buy' && row.slot !== 'hold_water')
    const [gone, other] = [bought[0]!, bought.find((row) => row.slot !== bought[0]!.slot)!]
    const rows = first.rows.filter((row) => row !== gone).map((row) => (row === other ? { ...row, text: '3 × Quarrick Slim' } : row))
    const changes = sinceBefore(before, later([{ ...first, rows }, ...before.builds.slice(1)]))?.builds[0]?.changes
    expect(changes?.some((words) => words.endsWith(`, taken out: ${gone.text}.`))).toBe(true)
    expect(changes?.some((words) => words.endsWith(`: 3 × Quarrick Slim, in place of ${other.text}.`))).toBe(true)
    const back = sinceBefore(later([{ ...first, rows }, ...before.builds.slice(1)]), before)?.builds[0]?.changes
    expect(back?.some((words) => words.endsWith(`, added: ${gone.text}.`))).toBe(true)
  })

  it('tells of more or fewer of one product the counts', () => {
    const row = first.rows.find(({ answer }) => answer === 'buy')!
    const named = (text: string) =>
      later([{ ...first, rows: first.rows.map((each) => (each === row ? { ...each, text } : each)) }, ...before.builds.slice(1)])
    const [told] = sinceBefore(named('2 × Quarrick Twin 100'), named('Quarrick Twin 100'))?.builds[0]?.changes ?? []
    expect(told).toMatch(/: 1 Quarrick Twin 100 in place of 2\.$/)
    const [more] = sinceBefore(named('2 × Quarrick Twin 100'), named('3 × Quarrick Twin 100'))?.builds[0]?.changes ?? []
    expect(more).toMatch(/: 3 Quarrick Twin 100 in place of 2\.$/)
  })

  it('tells the price of one and what the total is more or less, first in short', () => {
    const { today } = first.cost
    const line = first.cost.lines.find((one) => one.unitTodayMinor !== null)!
    if (!today.complete) throw new Error('the sample has a total')
    const lines = first.cost.lines.map((one) => (one === line ? { ...one, unitTodayMinor: line.unitTodayMinor! - 150 } : one))
    const cost = { ...first.cost, lines, today: { ...today, totalMinor: today.totalMinor - 159 } }
    const told = sinceBefore(before, later([{ ...first, cost }, ...before.builds.slice(1)]))
    expect(told?.inShort).toMatch(/^A is \$1\.59 less, /)
    expect(told?.builds).toHaveLength(1)
    const [price, total] = told?.builds[0]?.changes ?? []
    expect(price).toMatch(/^Price of /)
    expect(price).toContain(dollars(line.unitTodayMinor! - 150))
    expect(price).toContain(`it was ${dollars(line.unitTodayMinor!)}`)
    expect(total).toBe(`Total today: ${dollars(today.totalMinor - 159)}, $1.59 less; it was ${dollars(today.totalMinor)}.`)
  })

  it('tells a build that is new and one that was taken out', () => {
    const [a, ...others] = before.builds
    expect(sinceBefore(later(others), before)?.inShort).toContain('A is new')
    const gone = sinceBefore(before, later(others))
    expect(gone?.inShort).toContain(`${a!.letter} was taken out`)
  })

  it('tells two builds of one letter apart, where what stood after a build that was taken out moved up to its letter', () => {
    const [a, b] = [before.builds[0]!, before.builds[1]!]
    const told = sinceBefore({ ...before, builds: [a, b] }, later([{ ...b, letter: a.letter }]))
    expect(told?.inShort).toBe(`${a.letter} (it was ${b.letter}) as it was, the former ${a.letter} was taken out.`)
    expect(told?.builds.map(({ name }) => name)).toEqual([b.name, a.name])
    expect(told?.builds[0]?.changes).toEqual([`It was build ${b.letter}.`])
  })

  it('says nothing where the money is another: no sum can be held against the other', () => {
    const { inputs } = before
    const euros = { ...later(before.builds), inputs: { ...inputs, install: { ...inputs.install, currency: 'EUR' } } }
    expect(sinceBefore(before, euros)).toBeNull()
  })
})
