import { KIND_NAMES, kindInText, type Kind } from '../catalog/kinds.ts'
import { SPEC_FIELDS } from '../catalog/spec-fields.ts'
import type { Counted, Gear } from '../sizing/gear.ts'
import { phrase, type Phrase } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { fieldValue, listed } from './field-words.ts'
import type { GearReads } from './what-goes-in.ts'

const KIND_OF: Record<Exclude<keyof GearReads, 'appliances'>, Kind> = {
  tank: 'tank', stand: 'stand', mat: 'mat', lid: 'lid', filters: 'filter', heaters: 'heater', lights: 'light', substrates: 'substrate',
  conditioners: 'conditioner', testKits: 'test_kit', power: 'power', animals: 'livestock', sump: 'sump',
} // prettier-ignore

type Part = Counted<object> & { kind: Kind }

/** The parts of a build under one heading, each with its kind. */
function partsOf(gear: Gear, key: keyof GearReads): Part[] {
  if (key === 'appliances') return (gear.appliances ?? []).map((each) => each)
  const held = gear[key] ?? []
  const all: ReadonlyArray<Counted<object>> = Array.isArray(held) ? held : [held]
  return all.map((each) => ({ ...each, kind: KIND_OF[key] }))
}

/** "2 × Torvane 100 W"; an owned thing without a name is told by its kind alone. */
function nameOf({ kind, name, quantity }: Part): string {
  const plain = name === '' || name.toLowerCase().endsWith(kindInText(kind).toLowerCase()) ? name : `${KIND_NAMES[kind]} (${name})`
  const said = plain === '' ? KIND_NAMES[kind] : plain.charAt(0).toUpperCase() + plain.slice(1)
  return quantity === 1 ? said : `${quantity} × ${said}`
}

/** What of one part is stated and read: "length 120 cm, height 50 cm". */
function statedOf({ kind, spec }: Part, keys: readonly string[]): Phrase[] {
  const values = spec as Record<string, unknown>
  return SPEC_FIELDS[kind].flatMap((field) => {
    const value = keys.includes(field.key) ? fieldValue(field, values[field.key]) : undefined
    return value === undefined ? [] : [phrase`${field.label.charAt(0).toLowerCase() + field.label.slice(1)} ${value}`]
  })
}

/** What was entered of the parts that a check reads, a row a part; what nobody entered is told as assumed or missing. */
export const gearInputs = (gear: Gear, reads: GearReads): ExplainedInput[] =>
  (Object.keys(reads) as Array<keyof GearReads>).flatMap((key) =>
    partsOf(gear, key).flatMap((part): ExplainedInput[] => {
      const said = statedOf(part, reads[key] ?? [])
      return said.length === 0 ? [] : [{ name: nameOf(part), value: listed(said), from: 'entered' }]
    }),
  )
