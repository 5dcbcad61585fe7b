import { markup, type Markup } from './markup.ts'
import type { PageFault } from './page-fault.ts'

/** Of each field its name on the page and its place there. */
const FIELDS: Readonly<Partial<Record<string, { label: string; id: string }>>> = {
  tested: { label: 'Your word', id: 'tested' },
  doneOn: { label: 'Day on which it was done', id: 'done-on' },
  on: { label: 'Day of the start', id: 'start-on' },
  takenOn: { label: 'Day', id: 'reading-takenOn' },
  ammonia: { label: 'Ammonia', id: 'reading-ammonia' },
  nitrite: { label: 'Nitrite', id: 'reading-nitrite' },
  nitrate: { label: 'Nitrate', id: 'reading-nitrate' },
  ph: { label: 'pH', id: 'reading-ph' },
  kh: { label: 'KH', id: 'reading-kh' },
  temperature: { label: 'Temperature', id: 'reading-temperature' },
  note: { label: 'Note', id: 'reading-note' },
}

/** They are there only where the next step has a form. */
const TICK_FIELDS = ['tested', 'doneOn']

/**
 * All that was refused, at the head of the page, where a phone opens it: what is wrong, and a link to its place. The first link takes the focus without
 * a script. `ofTick` are the fields that the next step's form has now.
 */
export function faultsAbove(faults: readonly PageFault[], ofTick: readonly string[]): Markup | '' {
  if (faults.length === 0) return ''
  return markup`<div class="told stop faults" role="alert"><p class="told-head">Nothing was stored</p><ul class="plain">${faults.map((fault, index) => one(fault, index, ofTick))}</ul></div>`
}

function one({ field, message }: PageFault, index: number, ofTick: readonly string[]): Markup {
  const place = TICK_FIELDS.includes(field) && !ofTick.includes(field) ? undefined : FIELDS[field]
  if (place === undefined) return markup`<li>${message}</li>`
  return markup`<li><a href="#${place.id}"${index === 0 ? markup` autofocus` : ''}>${place.label}</a>: ${message}</li>`
}
