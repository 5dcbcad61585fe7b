import { markup, type Markup } from './markup.ts'

/** What was wrong with a form that was sent: the field by its name, or empty for the whole form, and a sentence with the limit and the fix. */
export interface PageFault {
  field: string
  message: string
}

export const faultOf = (faults: readonly PageFault[], field: string): PageFault | undefined => faults.find((fault) => fault.field === field)

/** The sentence under a field; the field names it in `aria-describedby`. */
export const faultLine = (id: string, fault: PageFault | undefined): Markup | '' =>
  fault === undefined ? '' : markup`<p class="fault" id="${id}-fault">${fault.message}</p>`

/** Faults of no single field, and of fields that are not in this form: they stand above it, so that none is lost. */
export function formFaults(faults: readonly PageFault[], fields: readonly string[]): Markup | '' {
  const mine = faults.filter((fault) => fault.field === '' || fields.includes(fault.field))
  return mine.length === 0 ? '' : markup`<div class="told stop" role="alert">${mine.map((fault) => markup`<p>${fault.message}</p>`)}</div>`
}
