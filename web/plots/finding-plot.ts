import type { Conditions } from '../../core/sizing/conditions.ts'
import type { SizingFigures } from '../../core/sizing/report.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { dripLoopDrawing } from './drip-loop.ts'
import { floorPlot, sayFloor } from './floor-plot.ts'
import type { PlotOptions } from './frame.ts'
import { heatPlot, sayHeat } from './heat-plot.ts'
import { lightPlot, sayLightAlong } from './light-plot.ts'
import type { PlotName } from './plot-of-finding.ts'
import { pumpPlot, sayPump } from './pump-plot.ts'

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
