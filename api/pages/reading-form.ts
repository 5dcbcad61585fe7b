import { randomUUID } from 'node:crypto'
import { parseQuantity } from '../../core/units/parse.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { readingInput, type ReadingInput } from '../../core/startup/schema.ts'
import type { PageFault } from '../../web/pages/page-fault.ts'
import { faultsOf } from './form.ts'

type ReadingOutcome = { reading: ReadingInput } | { faults: PageFault[] }

const NAMES = {
  ammoniaMgL: 'ammonia',
  nitriteMgL: 'nitrite',
  nitrateMgL: 'nitrate',
  ph: 'ph',
  khDegrees: 'kh',
  temperatureC: 'temperature',
} as const

/** Id of the test in a form: the one the page gave it, so that sending it twice stores it once; a new one where there is none. */
export const readingIdOf = (form: Partial<Record<string, string>>): string => {
  const id = form['id'] ?? ''
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(id) ? id : randomUUID()
}

/** Reads the water test form: figures as people type them, temperature and hardness in the reader's unit, an empty field as not measured. */
export function readReadingForm(form: Record<string, string>, units: ReaderUnits): ReadingOutcome {
  const faults: PageFault[] = []
  const figure = (name: string, unit: 'mg/L' | 'degC' | 'dKH' | 'share'): number | null => {
    const text = form[name]?.trim() ?? ''
    if (text === '') return null
    const parsed = unit === 'degC' || unit === 'dKH' ? parseQuantity(text, unit, units) : plainNumber(text)
    if (parsed.ok) return parsed.value
    faults.push({ field: name, message: 'Write a plain number, like 0.25. Leave it empty if you did not test it.' })
    return null
  }
  const draft = {
    id: readingIdOf(form),
    takenOn: form['takenOn'],
    ammoniaMgL: figure('ammonia', 'mg/L'),
    nitriteMgL: figure('nitrite', 'mg/L'),
    nitrateMgL: figure('nitrate', 'mg/L'),
    ph: figure('ph', 'share'),
    khDegrees: figure('kh', 'dKH'),
    temperatureC: figure('temperature', 'degC'),
    note: form['note'] ?? '',
  }
  if (faults.length > 0) return { faults }
  const read = readingInput(units).safeParse(draft)
  return read.success ? { reading: read.data } : { faults: faultsOf(read.error, NAMES) }
}

function plainNumber(text: string): { ok: true; value: number } | { ok: false } {
  return /^\d{1,6}([.,]\d{1,4})?$/.test(text) ? { ok: true, value: Number(text.replace(',', '.')) } : { ok: false }
}
