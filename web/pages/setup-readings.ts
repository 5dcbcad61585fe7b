import { sayDate, yearOf } from '../../core/dates.ts'
import type { Reading } from '../../core/quote/quote-view.ts'
import { displayUnit, sayNumber, sayQuantity } from '../../core/units/say.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { field } from './field.ts'
import { markup, type Markup } from './markup.ts'
import { formFaults, type PageFault } from './page-fault.ts'
import type { SetupPageProps } from './setup-page.ts'

const FIELDS = ['takenOn', 'ammonia', 'nitrite', 'nitrate', 'ph', 'temperature', 'note'] as const

/** Faults of a form that has its own name for a field are told there alone. */
const mine = (faults: readonly PageFault[]): PageFault[] => faults.filter((fault) => FIELDS.some((name) => name === fault.field))

/** Water tests: a form for a new one and the table of those written down. */
export function readingsPart(props: SetupPageProps): Markup {
  const faults = mine(props.faults)
  const open = faults.length > 0 || props.readings.length > 0
  return markup`<section class="readings" id="readings" aria-labelledby="h-readings"><h2 id="h-readings">Water tests</h2>
${readingsTable(props)}
<details class="new-reading"${open ? markup` open` : ''}><summary>Write down a water test</summary>${readingForm(props, faults)}</details></section>`
}

function readingForm(props: SetupPageProps, faults: readonly PageFault[]): Markup {
  const typed = (name: (typeof FIELDS)[number]): string => props.typed[name] ?? ''
  const figure = (name: (typeof FIELDS)[number], label: string, unit: string): Markup =>
    field({ id: `reading-${name}`, name, label, unit, value: typed(name), figure: true, faults })
  return markup`<form method="post" action="${props.path}/reading#readings"><input type="hidden" name="id" value="${props.readingId}">${formFaults(faults, [])}<p class="note">As read off the kit. What you did not test stays empty.</p>
<div class="figures">${field({ id: 'reading-takenOn', name: 'takenOn', label: 'Day', type: 'date', value: typed('takenOn') || props.today, most: props.today, required: true, faults })}
${figure('ammonia', 'Ammonia', 'mg/L')}${figure('nitrite', 'Nitrite', 'mg/L')}${figure('nitrate', 'Nitrate', 'mg/L')}${figure('ph', 'pH', '')}${figure('temperature', 'Temperature', displayUnit('degC', props.units))}</div>
${field({ id: 'reading-note', name: 'note', label: 'Note', value: typed('note'), faults })}
<button class="btn">Write it down</button></form>`
}

function readingsTable({ readings, units, today }: SetupPageProps): Markup {
  if (readings.length === 0)
    return markup`<p class="quiet">No test written down yet. The first one comes with the step “test the water”.</p>`
  const newestFirst = [...readings].sort((a, b) => (a.takenOn < b.takenOn ? 1 : a.takenOn > b.takenOn ? -1 : 0))
  return markup`<div class="table-room" tabindex="0" role="region" aria-label="Water tests, newest first"><table class="ruled"><thead><tr><th scope="col">Day</th><th scope="col" class="num">Ammonia</th><th scope="col" class="num">Nitrite</th><th scope="col" class="num">Nitrate</th><th scope="col" class="num">pH</th><th scope="col" class="num">Temp.</th></tr></thead><tbody>${newestFirst.map((reading) => row(reading, units, yearOf(today)))}</tbody></table></div><p class="note">Ammonia, nitrite and nitrate in mg/L.</p>`
}

function row(reading: Reading, units: ReaderUnits, year: number): Markup {
  const cell = (value: number | null): Markup =>
    markup`<td class="num">${value === null ? markup`<span class="sr">not tested</span>` : plain(value, units)}</td>`
  const temperature =
    reading.temperatureC === null
      ? markup`<span class="sr">not measured</span>`
      : sayQuantity({ value: reading.temperatureC, unit: 'degC', digits: 1 }, units)
  const note = reading.note === '' ? '' : markup`<tr class="reading-note"><td colspan="6">${reading.note}</td></tr>`
  return markup`<tr><th scope="row"><time datetime="${reading.takenOn}">${sayDate(reading.takenOn, year)}</time></th>${cell(reading.ammoniaMgL)}${cell(reading.nitriteMgL)}${cell(reading.nitrateMgL)}${cell(reading.ph)}<td class="num">${temperature}</td></tr>${note}`
}

/** A figure as it was read: no decimals added, none lost to two places. @example plain(0.25, METRIC) // '0.25' */
const plain = (value: number, units: ReaderUnits): string => {
  const digits = Number.isInteger(value) ? 0 : Number.isInteger(Math.round(value * 1000) / 100) ? 1 : 2
  return sayNumber(value, digits, units)
}
