import { cordRows } from '../../core/explanation/cord-rows.ts'
import { VERDICT_WORDS } from '../../core/sizing/finding.ts'
import type { SizingSubject } from '../../core/sizing/report.ts'
import { sayPhrase } from '../../core/units/say.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { dripLoopDrawing } from '../plots/drip-loop.ts'
import { VERDICT_CLASS, vial } from '../plots/vial.ts'
import { drawing, markup, type Markup } from './markup.ts'

/** Every cord with the reach that its loop wants and the cord that there is, and a drawing of each way that a cord leaves. */
export function cordList(subject: SizingSubject, reader: ReaderUnits): Markup {
  const rows = cordRows(subject)
  const drawn = [rows.find(({ rimMm }) => rimMm === undefined), rows.find(({ rimMm }) => rimMm !== undefined)].flatMap((row) =>
    row?.loop ? [row] : [],
  )
  return markup`<dl class="cords">${rows.map(
    ({ name, verdict, wanted, has }) =>
      markup`<div><dt>${name}${verdict === null ? '' : markup`<br><span class="verdict ${VERDICT_CLASS[verdict]}">${drawing(vial(verdict))}${verdict === 'fits' ? 'reaches' : VERDICT_WORDS[verdict]}</span>`}</dt><dd>wants <b>${wanted ? sayPhrase(wanted, reader) : 'room for a loop'}</b>, has ${sayPhrase(has, reader)}</dd></div>`,
  )}</dl>${drawn.map(
    ({ name, loop, rimMm, to }, index) =>
      loop &&
      markup`<figure class="cord-figure">${drawing(dripLoopDrawing(loop, { id: `cord-${index}`, reader, what: name, rimMm, to }))}</figure>`,
  )}`
}
