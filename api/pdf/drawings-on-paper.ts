import { documentUnits } from '../../core/quote/document-units.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { plotFigure, sayPlot } from '../../web/plots/finding-plot.ts'
import { PLOT_NAMES, plotsByFinding, type PlotName } from '../../web/plots/plot-of-finding.ts'
import type { Art } from './art.ts'
import type { DrawingPaper } from './paper.ts'

/** Pixels of a third of a sheet: 12 of them become 8 pt of lettering, so that 240 are 56 mm, and three stand side by side on A4 and on Letter. */
const THIRD_OF_SHEET = 240

/** What is drawn of a build beside its findings. The drip loop stands with its step. */
const plotsOf = ({ report }: AssembledBuild): PlotName[] =>
  [...plotsByFinding(report.findings, report.figures).values()].filter((plot) => plot !== 'loop')

const titleOf = (plot: PlotName): string => PLOT_NAMES[plot].charAt(0).toUpperCase() + PLOT_NAMES[plot].slice(1)

export function drawingsOnPaper(build: AssembledBuild, { conditions, inputs }: RevisionDocument): DrawingPaper[] {
  const source = { figures: build.report.figures, conditions }
  return plotsOf(build).map((plot) => ({ art: `plot-${plot}`, title: titleOf(plot), says: sayPlot(plot, source, documentUnits(inputs)) }))
}

export function drawingArt(build: AssembledBuild, { conditions, inputs }: RevisionDocument): Art {
  const source = { figures: build.report.figures, conditions }
  const options = { paper: true, reader: documentUnits(inputs), width: THIRD_OF_SHEET }
  return Object.fromEntries(plotsOf(build).map((plot) => [`plot-${plot}`, plotFigure(plot, source, { ...options, id: `plot-${plot}` })]))
}
