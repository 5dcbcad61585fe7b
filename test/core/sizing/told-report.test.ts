import { expect, it } from 'vitest'
import { CHECK_TITLES } from '../../../core/sizing/check-titles.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { FINDING_CAUTIONS } from '../../../core/sizing/finding-cautions.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import { SOURCES, type SourceName } from '../../../core/sizing/sources.ts'
import { toldFinding, toldReport } from '../../../core/sizing/told-report.ts'
import { conditions, gear } from './sample-build.ts'

/** What the words of each source speak of and those of no other. */
const TOPICS: Record<SourceName, RegExp> = {
  circulation: /ten to twenty times an hour/,
  conditioner_dose: /chloramine/,
  drain_down: /siphon/i,
  cord_length: /cord hangs/,
  electrical_load: /NEC 210\.19/,
  electrical_load_230: /230 V countries/,
  empty_lift: /How many lift/,
  filter_feed: /ammonia that feed makes/,
  filter_flow: /printed flow/,
  pump_curve: /pump’s curve meets/,
  floor_load: /Screening by total mass/,
  glass_pane: /Thin plate/,
  heater_holds: /at 25 % humidity/,
  heater_spare: /one heater may fail/,
  heater_stuck: /low-loss end/,
  joists: /one joist at its worst/,
  light_level: /kind of plants/,
  no_tank: /not stated/,
  outlet_protection: /ground-fault/,
  outlet_protection_230: /residual-current/,
  outlets: /outlet for each appliance/,
  surface_oxygen: /Benson/,
  salinity_drift: /salt stays/,
  skimmer_size: /skimmer/,
  stand_bedding: /closed-cell mat/,
  stand_footprint: /overhangs its stand/,
  stand_load: /water filled to the rim/,
  stand_wet: /Particle board/,
  substrate_depth: /volume of the packs/,
  tipping: /child’s pull/,
  warm_room: /usual losses, 50 % humidity/,
  weekly_change: /nitrate is borne/,
  light_coverage: /three quarters as long/,
  ammonia_tests: /ammonia and nitrite both read/,
}

/** Checks that rest on the source of another; every other one has its own name. */
const SHARED: Partial<Record<Check, SourceName>> = { flow_ceiling: 'filter_flow' }

const bare = sizingReport({ gear: gear(), conditions: conditions() })

it('tells every finding what it rests on and its caution in words, and changes nothing else', () => {
  const told = toldReport(bare)
  expect({ ...told, findings: [] }).toEqual({ ...bare, findings: [] })
  for (const [index, finding] of bare.findings.entries()) {
    const { source, caution, title, ...rest } = told.findings[index]!
    expect(title).toBe(CHECK_TITLES[finding.check])
    expect({ ...rest, source: finding.source, ...(finding.caution === undefined ? {} : { caution: finding.caution }) }).toEqual(finding)
    expect(source.text).toMatch(/^[A-Z]\D/)
    if (typeof finding.source === 'string') {
      expect(finding.source).toBe(SHARED[finding.check] ?? finding.check)
      expect(source.text).toMatch(TOPICS[finding.source])
    } else expect(source).toBe(finding.source)
    expect(caution).toBe(
      finding.caution === undefined ? undefined : Object.entries(FINDING_CAUTIONS).find(([name]) => name === finding.caution)?.[1],
    )
  }
})

it.each(Object.entries(TOPICS) as Array<[SourceName, RegExp]>)('has words about %s under that name and under no other', (name, topic) => {
  const about = Object.entries(SOURCES).filter(([, { text }]) => topic.test(text))
  expect(about.map(([found]) => found)).toEqual([name])
})

it('leaves what is told already as it is', () => {
  const told = toldReport(bare)
  expect(told.findings.map(toldFinding)).toEqual(told.findings)
})
