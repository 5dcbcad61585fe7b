import type * as z from 'zod'
import { describe, expect, it } from 'vitest'
import { KINDS, type Kind } from '../../core/catalog/kinds.ts'
import { ProductInput, StoreInput } from '../../core/catalog/schema.ts'
import { SPEC_FIELDS } from '../../core/catalog/spec-fields.ts'
import type { Field, NumberField } from '../../core/fields.ts'
import { InstallInput } from '../../core/install/schema.ts'
import { Invitation, NewPerson } from '../../core/people/schema.ts'
import { SightingInput } from '../../core/pricing/schema.ts'
import { emptyDraft } from '../../core/quote/empty-draft.ts'
import { AnswerInput, CustomerInput, QuoteDraftSchema } from '../../core/quote/schema.ts'
import { CONDITION_FIELDS } from '../../core/sizing/condition-fields.ts'
import { NeedExactSchema } from '../../core/sizing/schema.ts'
import { ReadingInput, TickInput } from '../../core/startup/schema.ts'

type Fault = { path: string; message: string }
function faultsOf(schema: z.ZodType, body: unknown): Fault[] {
  const read = schema.safeParse(body)
  return read.success ? [] : read.error.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }))
}

/** A value that the field takes. */
function usual(field: Field): unknown {
  if (field.type === 'flag') return true
  if (field.type === 'choice') return field.options[0]?.value
  return field.type === 'whole' ? Math.ceil((field.min + field.max) / 2) : (field.min + field.max) / 2
}
const required = (fields: readonly Field[]): Record<string, unknown> =>
  Object.fromEntries(fields.filter((field) => field.required).map((field) => [field.key, usual(field)]))
const product = (kind: Kind, spec: Record<string, unknown>) => ({ kind, name: 'Halden thing', spec, oversize: false, parts: [] })
const isNumber = (field: Field): field is NumberField => field.type === 'number' || field.type === 'whole'
const plain = (value: number): string => String(Number(value.toPrecision(12)))

/** What says a fault well: a sentence of ours with its field, none of a library's. */
function saidWell({ message }: Fault): void {
  expect(message).toMatch(/^(?:pH|[A-Z"“]).*[.?]$/s)
  expect(message.length).toBeLessThan(420)
  expect(message).not.toMatch(/Invalid (?:input|option)|Too (?:big|small)|expected (?:string|number|object)|NaN|undefined|Unrecognized/)
}

describe.each(KINDS)('a product of the kind %s', (kind) => {
  const fields = SPEC_FIELDS[kind]
  const faults = (key: string, value: unknown): Fault[] => faultsOf(ProductInput, product(kind, { ...required(fields), [key]: value }))

  it('takes every figure at its least and at its most', () => {
    for (const field of fields.filter(isNumber))
      for (const limit of [field.min, field.max]) expect([field.key, faults(field.key, limit)]).toEqual([field.key, []])
  })
  it('refuses just beyond, naming the field, both limits and what to look at', () => {
    for (const field of fields.filter(isNumber)) {
      const step = field.type === 'whole' ? 1 : Math.max(Math.abs(field.max), 1) * 1e-6
      for (const beyond of [field.min - step, field.max + step]) {
        const [fault, ...others] = faults(field.key, beyond)
        expect([field.key, fault?.path, others]).toEqual([field.key, `spec.${field.key}`, []])
        for (const words of [field.label, plain(field.min), plain(field.max)]) expect(fault?.message).toContain(words)
        expect(fault?.message).toMatch(/Was it in .*\?$|Check the figure and its unit\.$/)
      }
    }
  })
  it.each([
    ['nothing', ''],
    ['null', null],
    ['words', 'about twenty'],
    ['a figure with a unit', '20 in'],
    ['a list', []],
  ])('refuses %s in any field with its name', (_, value) => {
    for (const field of fields) {
      const [fault] = faults(field.key, value)
      expect([field.key, fault?.path]).toEqual([field.key, `spec.${field.key}`])
      if (fault) saidWell(fault)
      expect(fault?.message).toContain(field.label)
    }
  })
})

describe('what is asked under "more exact"', () => {
  const faults = (key: string, value: unknown): Fault[] => faultsOf(NeedExactSchema, { [key]: value })
  it('takes every figure at its limits and refuses just beyond with field, limits and fix', () => {
    for (const field of CONDITION_FIELDS.filter(isNumber)) {
      // At a limit another mark may be in the way; the range itself is not.
      for (const limit of [field.min, field.max])
        expect(faults(field.key, limit).filter(({ message }) => message.includes('is between'))).toEqual([])
      for (const beyond of [field.min - 0.001, field.max + 0.001]) {
        const fault = faults(field.key, beyond).find(({ path }) => path === field.key)
        for (const words of [field.label, plain(field.min), plain(field.max)]) expect(fault?.message).toContain(words)
      }
    }
  })
})

const id = '0198c0de-0000-7000-8000-000000000001'
const store = {
  name: 'Saltcote', kind: 'local', town: 'Tarnwick', country: 'US', subdivision: 'MI', timeZone: 'America/Detroit', taxBasisPoints: 600, pricesIncludeTax: false, deliveryTaxed: false,
  delivery: { kind: 'free_over', feeMinor: 500, freeOverMinor: 9900, oversizeMinor: 2500 }, returnDays: 30, note: 'Rear door.', archived: false,
} // prettier-ignore
const install = {
  name: 'Tarnwick Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/Detroit', units: { system: 'us', gallon: 'us', decimal: '.' }, contact: '555-0100', paper: 'letter',
  energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15, leastSavingMinor: 500,
} // prettier-ignore
const draft = {
  ...emptyDraft('a'), title: 'A tank', note: 'Bring it home first.', standsUntil: '2026-12-10', suggestion: { buildId: 'a', reason: 'It fits.' }, units: 'metric',
  need: { ...emptyDraft('a').need, lengthMm: 900, place: 'hall', livestockNote: 'a shoal', budgetMinor: 50_000, byDate: '2026-12-24', weekWaitMinor: 500, storeIds: [id] },
  builds: [{ id: 'a', name: 'First', why: 'Small.', lines: [
    { id: 'b', answer: 'buy', productId: id, quantity: 1, storeId: id, note: 'dry' }, { id: 'c', answer: 'not_needed', slot: 'cover', reason: 'open' },
  ] }],
} // prettier-ignore
const sighting = { id, productId: id, storeId: id, condition: 'sale', priceMinor: 1500, printedRegularMinor: 1900, seenOn: '2026-11-20', lastDay: '2026-11-25', evidence: 'tag', note: 'end of aisle' } // prettier-ignore
const reading = { id, takenOn: '2026-11-20', ammoniaMgL: 0.25, nitriteMgL: 0, nitrateMgL: 5, ph: 7, khDegrees: 4, temperatureC: 25, note: 'clear' } // prettier-ignore

const FORMS: Array<[string, z.ZodType, object]> = [
  ['store', StoreInput, store],
  ['settings', InstallInput, install],
  ['customer', CustomerInput, { name: 'Ada Quill', reach: 'at the counter', note: 'Tuesdays' }],
  ['quote', QuoteDraftSchema, draft],
  ['answer to a quote', AnswerInput, { revision: 1, answer: 'accepted', letter: 'A', note: 'please' }],
  ['sighting', SightingInput, sighting],
  ['water test', ReadingInput, reading],
  ['tick', TickInput, { done: true, tested: false }],
  ['new person', NewPerson, { name: 'Ines Marlow', signInName: 'ines', password: 'a sentence that is long enough' }],
  ['invitation', Invitation, { name: 'Ines Marlow', role: 'member' }],
]

type Path = ReadonlyArray<string | number>
/** Every field of a body with the path to it, objects and lists included. */
function fieldsOf(value: unknown, path: Path = []): Path[] {
  const inner = typeof value === 'object' && value !== null ? Object.entries(value) : []
  const list = Array.isArray(value)
  return [...(path.length > 0 ? [path] : []), ...inner.flatMap(([key, one]) => fieldsOf(one, [...path, list ? Number(key) : key]))]
}
/** A copy of a body with one field put to another value; undefined takes it out. */
function withField(body: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  const copy = (Array.isArray(body) ? [...(body as unknown[])] : { ...(body as object) }) as Record<string | number, unknown>
  copy[key] = withField(copy[key], rest, value)
  return copy
}
const valueAt = (body: unknown, path: Path): unknown => path.reduce((inner, key) => (inner as Record<string | number, unknown>)[key], body)

const ABSURD: ReadonlyArray<readonly [string, unknown]> = [
  ['nothing there', undefined], ['null', null], ['an empty text', ''], ['words', 'about twenty'], ['a figure with a unit', '20 in'], ['below any limit', -1e12], ['beyond any limit', 1e12],
  ['a fraction', 0.123456789], ['an endless text', 'x'.repeat(100_000)], ['a list', []], ['an object', {}], ['yes', true], ['half of a character', 'a\ud800'],
] // prettier-ignore

describe.each(FORMS)('a body of the form %s', (_, schema, body) => {
  it('is taken as it is', () => expect(faultsOf(schema, body)).toEqual([]))

  it.each(ABSURD)('with %s in any one field is taken, or refused by that field in words', (__, value) => {
    for (const path of fieldsOf(body)) {
      for (const fault of faultsOf(schema, withField(body, path, value))) {
        // A field may make another one impossible; what holds both is then named.
        const named = path.join('.')
        const related = fault.path.split('.')[0] === String(path[0])
        expect([named, fault.path, related || schema === SightingInput || schema === AnswerInput || schema === QuoteDraftSchema]).toEqual([
          named,
          fault.path,
          true,
        ])
        saidWell(fault)
      }
    }
  })

  it('refuses a figure far beyond its limits with a figure to keep to', () => {
    for (const path of fieldsOf(body).filter((one) => typeof valueAt(body, one) === 'number')) {
      for (const far of [-1e12, 1e12]) {
        const fault = faultsOf(schema, withField(body, path, far)).find((one) => one.path === path.join('.'))
        expect([path.join('.'), fault?.message ?? 'taken']).toEqual([path.join('.'), expect.stringMatching(/\d/)])
      }
    }
  })

  it('refuses a field that it does not have by its name', () => {
    expect(faultsOf(schema, { ...body, weight: 3 })[0]?.message).toContain('no field "weight"')
  })
})
