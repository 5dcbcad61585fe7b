import { describe, expect, it } from 'vitest'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import { sayCounts } from '../../../core/sizing/count-words.ts'
import { byHurt, findingsOf, sizingReport } from '../../../core/sizing/engine.ts'
import { CHECKS, SOURCE_WORDS, VERDICTS, type Finding } from '../../../core/sizing/finding.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, group, one, reportOf } from './sample-build.ts'

describe('a whole build with every spec stated', () => {
  const report = reportOf()

  it('makes every check once, worst first and what hurts first within', () => {
    const checks = report.findings.map(({ check }) => check)
    // The panes of a new tank of a common size are its maker's business.
    const salt = ['salinity_drift', 'circulation', 'skimmer_size']
    // No sump stands below it.
    const fresh = CHECKS.filter((check) => !salt.includes(check) && check !== 'drain_down')
    expect([...checks].sort()).toEqual(fresh.filter((check) => check !== 'glass_pane').sort())
    const { tank, ...others } = gear()
    const used = sizingReport({ gear: { ...others, tank: tank && { ...tank, owned: true } }, conditions: conditions() })
    expect(used.findings.map(({ check }) => check).sort()).toEqual(fresh.sort())
    const reef = reportOf({ appliances: [{ kind: 'skimmer', ...one('Corbelle foam', {}) }] }, { livestock: group('soft-coral-reef') })
    expect(reef.findings.map(({ check }) => check)).toEqual(expect.arrayContaining(salt))
    const keys = report.findings.map(({ verdict, hurtRank }) => VERDICTS.indexOf(verdict) * 100 + hurtRank)
    expect(keys).toEqual([...keys].sort((a, b) => a - b))
  })

  it('finds the same without the figures', () => {
    const { findings, usable } = findingsOf({ gear: gear(), conditions: conditions() })
    expect(usable).toBe(true)
    const byRank = (found: readonly Finding[]) => found.map(toldFinding).toSorted((a, b) => a.hurtRank - b.hurtRank)
    expect(byRank(findings)).toEqual(byRank(report.findings))
  })

  it('counts what it found', () => {
    for (const verdict of VERDICTS) expect(report.counts[verdict]).toBe(report.findings.filter((f) => f.verdict === verdict).length)
  })

  it('counts no floor within its usual allowance as marginal, and tells it in its own words', () => {
    const marginal = report.findings.filter(({ verdict, check }) => verdict === 'marginal' && check !== 'floor_load').length
    const onSlab = reportOf({}, { floor: 'ground_slab' })
    const resting = ({ findings }: typeof report) =>
      findings.filter(({ verdict, assumed }) => verdict === 'fits' && assumed.length > 0).length
    expect(onSlab.findings.find(({ check }) => check === 'floor_load')?.wording).toBe('within the usual allowance')
    expect(onSlab.counts.marginal).toBe(marginal)
    expect(sayCounts(onSlab).map(({ words }) => words)).toEqual([
      `${marginal} marginal`,
      `${onSlab.counts.fits} fit, ${resting(onSlab)} assumed`,
      'floor: within the usual allowance',
    ])
    // Where it is to be asked about, that stands first, and in no count.
    expect(report.findings.find(({ check }) => check === 'floor_load')?.wording).toBe('ask before you place it')
    expect(sayCounts(report).map(({ words }) => words)).toEqual([
      'floor: ask before you place it',
      `${report.counts.marginal} marginal`,
      `${report.counts.fits} fit, ${resting(report)} assumed`,
    ])
  })

  it('puts what does not fit before what may hurt more, whichever of the two comes first', () => {
    const found = (verdict: Finding['verdict'], hurtRank: number) => ({ verdict, hurtRank }) as Finding
    const [heater, floor, light, bed] = [found('marginal', 1), found('not_known', 6), found('does_not_fit', 30), found('does_not_fit', 32)]
    for (const order of [
      [heater, floor, light, bed],
      [bed, light, floor, heater],
      [floor, bed, heater, light],
    ])
      expect(order.toSorted(byHurt)).toEqual([light, bed, heater, floor])
  })

  it('puts on page one the three that can hurt first, what does not fit before anything else', () => {
    const first = (...changes: Parameters<typeof reportOf>) => {
      const { pageOne, findings } = reportOf(...changes)
      return pageOne.map((index) => `${findings[index]?.check} ${findings[index]?.verdict}`)
    }
    expect(first()).toEqual(['heater_stuck marginal', 'floor_load not_known', 'empty_lift marginal'])
    // A floor within its usual allowance takes nobody's place, and a fourth none.
    const worse = {
      heaters: [one('Torvane', { powerW: 300 })],
      lid: null,
      stand: one('Thornby', { topLengthMm: 900, topWidthMm: 300, ratedLoadKg: 200 }),
      power: [],
    }
    const slab = { floor: 'ground_slab' } as const
    expect(first({ power: [], stand: one('Thornby', { ...worse.stand.spec, ratedLoadKg: 600 }) })).toEqual([
      'outlet_protection does_not_fit',
      'stand_footprint does_not_fit',
      'heater_stuck marginal',
    ])
    expect(first(worse, slab)).toEqual(['heater_stuck does_not_fit', 'outlet_protection does_not_fit', 'stand_load does_not_fit'])
    const { findings, counts } = reportOf(worse, slab)
    // The first ten by hand: what does not fit by its rank, what is not known by its own, then what is marginal.
    expect(findings.slice(0, 10).map(({ check }) => check)).toEqual([
      'heater_stuck',
      'outlet_protection',
      'stand_load',
      'stand_footprint',
      'tipping',
      'cord_length',
      'outlets',
      'floor_load',
      'heater_spare',
      'empty_lift',
    ])
    expect(counts).toEqual({ does_not_fit: 4, not_known: 3, marginal: 2, fits: findings.length - 10 })
  })

  it('tells a build without a usable tank from one with', () => {
    expect(findingsOf({ gear: gear({ tank: null }), conditions: conditions() }).usable).toBe(false)
  })

  it('gives each finding a title, a reason, a source, and an action where something is wrong', () => {
    for (const finding of report.findings) {
      expect(sayPhrase(finding.reason, METRIC)).toMatch(/\.$/)
      expect(finding.source.text).not.toBe('')
      if (finding.verdict === 'does_not_fit' || (finding.verdict === 'not_known' && !finding.wording)) expect(finding.action).not.toBeNull()
    }
  })

  it('gives sources that stand for themselves: no tag twice, no figure in the units of one reader alone', () => {
    const groups = LIVESTOCK_GROUPS.flatMap((livestock) => reportOf({}, { livestock }).findings)
    for (const { check, source } of [...groups, ...reportOf({ tank: null }).findings]) {
      expect([check, source.text]).toEqual([check, expect.not.stringMatching(/\d\s?(°[CF]|K|k?g|m?L|[cm]?m|in|ft|lb|gal|psf|litres?)\b/)])
      expect([check, source.text.toLowerCase().includes(SOURCE_WORDS[source.tag])]).toEqual([check, false])
      expect(source.text).toMatch(/^[A-Z]/)
    }
  })

  it('rests on nothing but the trade’s ranges', () => {
    const assumed = new Set(report.findings.flatMap((finding) => finding.assumed))
    expect([...assumed].filter((name) => /glass|material|power|temperature/.test(name))).toEqual([])
  })

  it('fits as a whole once the heaters have a controller, the floor apart', () => {
    const better = reportOf(
      { heaters: [one('Torvane', { powerW: 100, cordMm: 2600, externalController: true }, 2)] },
      { floor: 'ground_slab' },
    )
    expect(better.counts).toMatchObject({ does_not_fit: 0, not_known: 0 })
    // Left to look at on page one: three people to lift it; the floor is within its allowance.
    expect(better.pageOne.map((index) => better.findings[index]?.check)).toEqual(['empty_lift'])
  })
})

describe('a build without a usable tank', () => {
  it.each([
    ['no tank', { tank: null }, {}, 'length, depth and height of the tank'],
    ['a bed that reaches the surface', {}, { substrateDepthMm: 495, waterBelowRimMm: 40 }, 'substrate depth that leaves water above it'],
    [
      'a fill line below the floor',
      { tank: one('Flat', { lengthMm: 900, widthMm: 450, heightMm: 200, glassMm: 6, bottomMm: 6 }) },
      { waterBelowRimMm: 250 },
      'water level below the rim that leaves water in the tank',
    ],
    [
      'panels as thick as the tank',
      { tank: one('Thick', { lengthMm: 300, widthMm: 60, heightMm: 300, glassMm: 30, bottomMm: 10 }) },
      {},
      'thickness of glass and bottom that leaves room inside',
    ],
  ])('with %s says what to enter and judges nothing by it', (_what, gearChanges, roomChanges, missing) => {
    const report = reportOf(gearChanges, roomChanges)
    const stuck = report.findings.find(({ check }) => check === 'heater_stuck')
    expect(stuck).toMatchObject({ verdict: 'not_known', missing: [missing] })
    expect(stuck?.action).not.toBeNull()
    expect(report.figures.waterVolumeL).toBeUndefined()
    expect(report.findings.find(({ check }) => check === 'outlet_protection')?.verdict).toBe('fits')
  })

  it('stands up to a build of nothing at all', () => {
    const nothing: Gear = {
      tank: null,
      stand: null,
      mat: null,
      lid: null,
      filters: [],
      heaters: [],
      lights: [],
      substrates: [],
      conditioners: [],
      testKits: [],
      power: [],
      notNeeded: {},
    }
    const report = sizingReport({ gear: nothing, conditions: conditions() })
    expect(report.counts.fits).toBe(0)
    expect(report.pageOne.length).toBe(3)
  })
})

describe('a build with one figure left open', () => {
  it('never judges an unstated thickness other than every stated one inside its range', () => {
    const spec = gear().tank!.spec
    const unstated = reportOf({ tank: one('Wendlemere', { ...spec, glassMm: undefined, bottomMm: undefined }) })
    for (const glassMm of [8, 9, 10, 12, 15]) {
      const stated = reportOf({ tank: one('Wendlemere', { ...spec, glassMm, bottomMm: glassMm }) })
      for (const finding of unstated.findings) {
        if (finding.verdict === 'not_known') continue
        expect([finding.check, stated.findings.find(({ check }) => check === finding.check)?.verdict]).toEqual([
          finding.check,
          finding.verdict,
        ])
      }
    }
  })
})
