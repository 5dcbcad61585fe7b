import { VERDICTS } from '../../core/sizing/finding.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { dip } from '../../web/plots/dip.ts'
import { dripLoopDrawing } from '../../web/plots/drip-loop.ts'
import { levelDrawing } from '../../web/plots/level.ts'
import { markSvg } from '../../web/plots/mark.ts'
import { tankDrawings } from '../../web/plots/tank-drawing.ts'
import { tierMark } from '../../web/plots/tier-marks.ts'
import { vial } from '../../web/plots/vial.ts'
import { drawingArt } from './drawings-on-paper.ts'
import { qrSvg } from './qr-code.ts'

/** Pictures by name, as SVG of our own making: the signs of the house, the tanks, the step drawings, the codes. */
export type Art = Record<string, string>

const paper = true

/** @example Object.keys(artOf(document, chosen, null)) // ['mark', 'dip', 'tier-full', …, 'tank-A', 'loop'] */
export function artOf(document: RevisionDocument, chosen: AssembledBuild, links: { quote: string; setup: string } | null): Art {
  const reader = documentUnits(document.inputs)
  const loop = chosen.report.figures.dripLoop
  return {
    ...signs(),
    ...tankArt(document, 'whole'),
    ...tankArt(document, 'cut'),
    level: levelDrawing({ id: 'level', paper }),
    ...(loop ? { loop: dripLoopDrawing(loop, { id: 'loop', paper, reader }) } : {}),
    ...drawingArt(chosen, document),
    ...(links ? { 'qr-quote': qrSvg(links.quote), 'qr-setup': qrSvg(links.setup) } : {}),
  }
}

/** Pixels of a column: 12 of them become 8 pt of lettering, so 196 are 46 mm and 146 are 34 mm, a column of three and of four builds. */
const COLUMN = { three: 196, four: 146 } as const

/** Every build's tank to one scale, with its whole stand where there is room, and with the stand cut short. */
function tankArt({ builds, inputs }: RevisionDocument, stand: 'whole' | 'cut'): Art {
  const tanks = builds.map((build) => (build.drawing === null ? null : { ...build.drawing, letter: build.letter }))
  const drawn = tankDrawings(tanks, {
    id: `tank-${stand}`,
    paper,
    reader: documentUnits(inputs),
    stand,
    width: builds.length > 3 ? COLUMN.four : COLUMN.three,
  })
  return Object.fromEntries(builds.flatMap((build, index) => (drawn[index] ? [[`tank-${stand}-${build.letter}`, drawn[index]]] : [])))
}

function signs(): Art {
  return {
    mark: markSvg({ paper }),
    dip: dip({ paper }),
    'tier-full': tierMark('full', { paper }),
    'tier-today': tierMark('today', { paper }),
    'tier-byDate': tierMark('byDate', { paper }),
    'tier-bestSeen': tierMark('bestSeen', { paper }),
    ...Object.fromEntries(VERDICTS.map((verdict) => [`vial-${verdict}`, vial(verdict, { paper })])),
  }
}
