import { fine, phrase, quantity, type Unit } from '../units/quantity.ts'
import type { Counted, Gear } from './gear.ts'
import type { InputEnd } from './open-input.ts'
import type { Span } from './span.ts'

/** A build with something stated that was not. */
export type GearChange = (gear: Gear) => Gear

/** @example stateGear((gear) => ({ ...gear, mat: null }))(subject).gear.mat // null */
export const stateGear =
  (change: GearChange): InputEnd['state'] =>
  (subject) => ({ ...subject, gear: change(subject.gear) })

/** Unit and decimals a figure is told in. */
export type Told = readonly [unit: Unit, digits: number]
export const MM: Told = ['mm', 0]
export const WATTS: Told = ['W', 0]

/** Both ends of a figure. @example figureEnds({ low: 4, high: 8 }, MM, setGlass)[1].says // 8 mm */
export const figureEnds = ({ low, high }: Span, told: Told, set: (value: number) => GearChange): InputEnd[] =>
  [low, high].map((value) => ({ says: phrase`${quantity(value, ...told)}`, state: stateGear(set(value)) }))

/** Both ends of a thickness. @example thinEnds({ low: 5.6, high: 6.4 }, setBottom)[0].says // 6 mm, or 0.24 in (6 mm) */
export const thinEnds = ({ low, high }: Span, set: (value: number) => GearChange): InputEnd[] =>
  [low, high].map((value) => ({ says: phrase`${fine(quantity(value, 'mm', 0))}`, state: stateGear(set(value)) }))

/** What was stated goes before what is tried. @example stating(heater, { powerW: 50 }) // a heater stated at 100 W keeps them */
export const stating = <Item extends Counted<object>>(item: Item, spec: Partial<Item['spec']>): Item => ({
  ...item,
  spec: { ...spec, ...withoutOpen(item.spec) },
})

/** A field that is there and undefined is as open as one that is not there. */
const withoutOpen = (spec: object): object => Object.fromEntries(Object.entries(spec).filter(([, value]) => value !== undefined))
