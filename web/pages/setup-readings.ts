import { sayDate, yearOf } from '../../core/dates.ts'
import type { Reading } from '../../core/quote/quote-view.ts'
import { figureAsRead } from '../../core/startup/reading-marks.ts'
import { displayUnit, sayQuantity } from '../../core/units/say.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { field } from './field.ts'
import { markup, type Markup } from './markup.ts'
import type { PageFault } from './page-fault.ts'
import { readingAlarm } from './setup-alarm.ts'
import type { SetupPageProps } from './setup-page.ts'

const FIELDS = ['takenOn', 'ammonia', 'nitrite', 'nitrate', 'ph', 'kh', 'temperature', 'note'] as const

/** Faults of a form that has its own name for a field are told there alone. */
const mine = (faults: readonly PageFault[]): PageFault[] => faults.filter((fault) => FIELDS.some((name) => name === fault.field))

/** Water tests: what must not be passed over, those written down, and a form for a new one. */
export function readingsPart(props: SetupPageProps): Markup {
  const faults = mine(props.faults)
  const open = faults.length > 0 || props.readings.length > 0
  return markup`<section class="readings" id="readings" aria-labelledby="h-readings"><h2 id="h-readings">Water tests</h2>
${readingAlarm(props)}
${readingsList(props)}
<details class="new-reading"${open ? markup` open` : ''}><summary>Write down a water test</summary>${readingForm(props, faults)}</details></section>`
}

function readingForm(props: SetupPageProps, faults: readonly PageFault[]): Markup {
  const typed = (name: (typeof FIELDS)[number]): string => props.typed[name] ?? ''
  const figure = (name: (typeof FIELDS)[number], label: string, unit: string): Markup =>
    field({ id: `reading-${name}`, name, label, unit, value: typed(name), figure: true, faults })
  return markup`<form method="post" action="${props.path}/reading"><input type="hidden" name="id" value="${props.readingId}"><p class="note">As read off the kit. What you did not test stays empty.</p>
<div class="figures">${field({ id: 'reading-takenOn', name: 'takenOn', label: 'Day', type: 'date', value: typed('takenOn') || props.today, most: props.today, ...(props.startedOn === null ? {} : { least: props.startedOn }), required: true, faults })}
${figure('ammonia', 'Ammonia', 'mg/L')}${figure('nitrite', 'Nitrite', 'mg/L')}${figure('nitrate', 'Nitrate', 'mg/L')}${figure('ph', 'pH', '')}${figure('kh', 'KH', displayUnit('dKH', props.units))}${figure('temperature', 'Temperature', displayUnit('degC', props.units))}</div>
${field({ id: 'reading-note', name: 'note', label: 'Note', value: typed('note'), faults })}
<button class="btn">Write it down</button></form>`
}

/** Figures of one test with their names and units, in the order of the form; what was not tested is left out. */
export function figuresOf(reading: Reading, units: ReaderUnits): Array<{ label: string; value: string }> {
  const said = (label: string, value: number | null, unit: 'mg/L' | 'share' | 'dKH' | 'degC') =>
    value === null ? [] : [{ label, value: sayQuantity(unit === 'degC' ? { value, unit, digits: 1 } : figureAsRead(value, unit), units) }]
  return [
    ...said('Ammonia', reading.ammoniaMgL, 'mg/L'),
    ...said('Nitrite', reading.nitriteMgL, 'mg/L'),
    ...said('Nitrate', reading.nitrateMgL, 'mg/L'),
    ...said('pH', reading.ph, 'share'),
    ...said('KH', reading.khDegrees, 'dKH'),
    ...said('Temperature', reading.temperatureC, 'degC'),
  ]
}

function readingsList(props: SetupPageProps): Markup {
  const { readings } = props
  if (readings.length === 0)
    return markup`<p class="quiet">No test written down yet. The first one comes with the step “test the water”.</p>`
  // Of one day the one written down last comes first.
  const newestFirst = [...readings].reverse().sort((a, b) => (a.takenOn < b.takenOn ? 1 : a.takenOn > b.takenOn ? -1 : 0))
  return markup`<ol class="tests" aria-label="Water tests, newest first">${newestFirst.map((reading) => one(reading, props))}</ol>`
}

function one(reading: Reading, { units, today, path }: SetupPageProps): Markup {
  const day = sayDate(reading.takenOn, yearOf(today))
  return markup`<li><h3><time datetime="${reading.takenOn}">${day}</time></h3>
<dl>${figuresOf(reading, units).map(({ label, value }) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>${reading.note === '' ? '' : markup`<p class="note">${reading.note}</p>`}
<details><summary>Take this test out<span class="sr">, ${day}</span></summary><form method="post" action="${path}/reading/remove"><input type="hidden" name="reading" value="${reading.id}"><input type="hidden" name="confirm" value="1"><p class="note">A test that was misread or written twice. It cannot be brought back.</p><button class="btn">Yes, take this test out</button></form></details></li>`
}
