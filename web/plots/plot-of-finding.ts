import type { Check, Finding } from '../../core/sizing/finding.ts'
import type { SizingFigures } from '../../core/sizing/report.ts'

/** Findings that people would rather look at than read, by what is drawn of them; the order is that of their drawings. */
export const PLOTS = ['heat', 'pump', 'light', 'floor', 'loop'] as const
export type PlotName = (typeof PLOTS)[number]

/** What a drawing is called where one may open it. */
export const PLOT_NAMES: Record<PlotName, string> = {
  heat: 'heat against the room',
  pump: 'pump and hoses',
  light: 'light along the tank',
  floor: 'tank on the joists',
  loop: 'drip loop',
}

const PLOT_OF: Partial<Record<Check, PlotName>> = {
  heater_holds: 'heat',
  heater_stuck: 'heat',
  heater_spare: 'heat',
  filter_flow: 'pump',
  flow_ceiling: 'pump',
  light_level: 'light',
  light_coverage: 'light',
  floor_load: 'floor',
  cord_length: 'loop',
}

const KNOWN: Record<PlotName, keyof SizingFigures> = {
  heat: 'heatCurve',
  pump: 'pumpCurve',
  light: 'lightAlong',
  floor: 'floorPlan',
  loop: 'dripLoop',
}

/**
 * Which finding each drawing stands with: the first that it is about, in the order given, so that none is drawn twice.
 *
 * @example plotsByFinding(report.findings, report.figures).get(heaterStuck) // 'heat'
 */
export function plotsByFinding<F extends Finding>(findings: readonly F[], figures: SizingFigures): Map<F, PlotName> {
  const placed = new Map<F, PlotName>()
  const taken = new Set<PlotName>()
  for (const finding of findings) {
    const plot = PLOT_OF[finding.check]
    if (plot === undefined || taken.has(plot) || figures[KNOWN[plot]] === undefined) continue
    taken.add(plot)
    placed.set(finding, plot)
  }
  return placed
}
