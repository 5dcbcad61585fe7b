import type { Conditions } from '../../core/sizing/conditions.ts'
import type { Check, Finding } from '../../core/sizing/finding.ts'
import type { SizingFigures } from '../../core/sizing/report.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { dripLoopDrawing } from './drip-loop.ts'
import { floorPlot, sayFloor } from './floor-plot.ts'
import type { PlotOptions } from './frame.ts'
import { heatPlot, sayHeat } from './heat-plot.ts'
import { lightPlot, sayLightAlong } from './light-plot.ts'
import { pumpPlot, sayPump } from './pump-plot.ts'

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

/** What a drawing is made of: a build's figures and the room it stands in. */
export interface PlotSource {
  figures: SizingFigures
  conditions: Pick<Conditions, 'plants'>
}

/** A finding's drawing at a width in px; empty text where its figures are not known. */
export function plotFigure(
  plot: PlotName,
  { figures, conditions }: PlotSource,
  options: PlotOptions & { reader: ReaderUnits; width: number },
): string {
  switch (plot) {
    case 'heat':
      return figures.heatCurve ? heatPlot(figures.heatCurve, options) : ''
    case 'pump':
      return figures.pumpCurve ? pumpPlot(figures.pumpCurve, options) : ''
    case 'light':
      return figures.lightAlong ? lightPlot(figures.lightAlong, { ...options, plants: conditions.plants }) : ''
    case 'floor':
      return figures.floorPlan ? floorPlot(figures.floorPlan, options) : ''
    case 'loop':
      return figures.dripLoop ? dripLoopDrawing(figures.dripLoop, options) : ''
  }
}

/** What the drawing of a finding says, in a sentence or two: for paper, and for whoever does not see it. The loop's own words are in its drawing. */
export function sayPlot(plot: PlotName, { figures, conditions }: PlotSource, reader: ReaderUnits): string {
  const { heatCurve, pumpCurve, lightAlong, floorPlan } = figures
  if (plot === 'heat' && heatCurve) return sayHeat(heatCurve, reader)
  if (plot === 'pump' && pumpCurve) return sayPump(pumpCurve, reader)
  if (plot === 'light' && lightAlong) return sayLightAlong(lightAlong, conditions.plants, reader)
  return plot === 'floor' && floorPlan ? sayFloor(floorPlan, reader) : ''
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
export function plotsByFinding(findings: readonly Finding[], figures: SizingFigures): Map<Finding, PlotName> {
  const placed = new Map<Finding, PlotName>()
  const taken = new Set<PlotName>()
  for (const finding of findings) {
    const plot = PLOT_OF[finding.check]
    if (plot === undefined || taken.has(plot) || figures[KNOWN[plot]] === undefined) continue
    taken.add(plot)
    placed.set(finding, plot)
  }
  return placed
}
