import { markup, type Markup } from './markup.ts'
import { faultLine, faultOf, type PageFault } from './page-fault.ts'

interface Field {
  /** Unique on the page. */
  id: string
  name: string
  label: string
  type?: 'text' | 'date'
  unit?: string
  hint?: string
  value: string
  required?: boolean
  /** Figures get the phone's number keys; the field itself stays text, so that nothing typed is lost. */
  figure?: boolean
  least?: string
  most?: string
  faults: readonly PageFault[]
}

/** A label, a line to write on, its unit at the end, and what was wrong below it, with what was typed kept. */
export function field(of: Field): Markup {
  const fault = faultOf(of.faults, of.name)
  const told = [fault === undefined ? '' : `${of.id}-fault`, of.hint === undefined ? '' : `${of.id}-hint`]
    .filter((id) => id !== '')
    .join(' ')
  return markup`<div class="field"${fault === undefined ? '' : markup` data-state="fault"`}>
<label for="${of.id}">${of.label}</label>
<div class="entry"><input id="${of.id}" name="${of.name}" type="${of.type ?? 'text'}" value="${of.value}" autocomplete="off" maxlength="40"${of.figure === true ? markup` inputmode="decimal"` : ''}${of.least === undefined ? '' : markup` min="${of.least}"`}${of.most === undefined ? '' : markup` max="${of.most}"`}${of.required === true ? markup` required` : ''}${told === '' ? '' : markup` aria-describedby="${told}"`}${fault === undefined ? '' : markup` aria-invalid="true"`}>${of.unit === undefined || of.unit === '' ? '' : markup`<span class="unit">${of.unit}</span>`}</div>
${of.hint === undefined ? '' : markup`<p class="note" id="${of.id}-hint">${of.hint}</p>`}${faultLine(of.id, fault)}
</div>`
}

/** Several lines of free text. */
export function noteField(of: { id: string; name: string; label: string; value: string; faults: readonly PageFault[] }): Markup {
  const fault = faultOf(of.faults, of.name)
  return markup`<div class="field"${fault === undefined ? '' : markup` data-state="fault"`}>
<label for="${of.id}">${of.label}</label>
<div class="entry"><textarea id="${of.id}" name="${of.name}" rows="3" maxlength="1000"${fault === undefined ? '' : markup` aria-invalid="true" aria-describedby="${of.id}-fault"`}>${of.value}</textarea></div>
${faultLine(of.id, fault)}
</div>`
}
