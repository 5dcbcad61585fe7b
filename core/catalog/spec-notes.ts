import { phrase, quantity } from '../units/quantity.ts'
import type { Product } from './product.ts'
import type { Spec } from './spec.ts'
import { airPumpNote, practice, type NotedProduct, type SpecNote } from './spec-note.ts'
import { waterNotes } from './water-notes.ts'

/** A stand this high falls on whoever climbs it. Common practice: furniture of table height and more is fixed to the wall. */
const TALL_STAND_MM = 900
/** A used heater's seal and contacts are not trusted past this age. Common practice. */
const HEATER_YEARS = 3

/**
 * Notes that follow from a spec by themselves; none where the field that would ask for one is not known, except where not knowing is itself the danger.
 *
 * Range:  any stored product; a kit has none, its parts have theirs. `owned`: already in the house, so used.
 * Source: common practice throughout, as beside each note; figures in the reader's units.
 *
 * @example specNotes({ kind: 'stand', spec: { surface: 'particle_board' } }).map(({ id }) => id) // ['stand-particle-board']
 */
export function specNotes(product: { kind: Product['kind']; spec: Spec }, { owned = false } = {}): SpecNote[] {
  const noted = product as NotedProduct
  switch (noted.kind) {
    case 'tank':
      return tankNotes(noted.spec)
    case 'stand':
      return standNotes(noted.spec)
    case 'heater':
      return heaterNotes(noted.spec, owned)
    case 'filter':
      return noted.spec.type === 'sponge' ? [airPumpNote('filter-sponge', 'Its air pump')] : []
    case 'power':
      return [practice('power-place', phrase`Hang it above the water line, off the floor of the cabinet, and never behind another strip.`)]
    default:
      return waterNotes(noted)
  }
}

function tankNotes({ style, material }: Extract<NotedProduct, { kind: 'tank' }>['spec']): SpecNote[] {
  const notes: SpecNote[] = []
  if (style === 'rimless' || style === 'braced')
    notes.push(
      practice('tank-flat-bottom', phrase`Stands on a mat over its whole bottom. Level the stand, never the glass, or the bottom cracks.`),
    )
  if (style === 'rimmed') notes.push(practice('tank-rimmed', phrase`Stands on its frame alone: no mat under it.`))
  if (material === 'acrylic') notes.push(practice('tank-acrylic', phrase`Scratches: no blades and no kitchen pads.`))
  return notes
}

function standNotes({ surface, heightMm }: Extract<NotedProduct, { kind: 'stand' }>['spec']): SpecNote[] {
  const notes: SpecNote[] = []
  if (surface === 'particle_board')
    notes.push(
      practice('stand-particle-board', phrase`Must stay dry: particle board swells and loses its strength. Wipe at once, seal cut edges.`),
    )
  if (heightMm !== undefined && heightMm >= TALL_STAND_MM)
    notes.push(practice('stand-tall', phrase`Fix it to the wall: at ${quantity(heightMm, 'mm', 0)} it can be pulled over.`))
  return notes
}

function heaterNotes({ adjustable }: Extract<NotedProduct, { kind: 'heater' }>['spec'], owned: boolean): SpecNote[] {
  const notes: SpecNote[] = []
  if (owned) notes.push(practice('heater-age', phrase`Already used: replace it if it is over ${HEATER_YEARS} years old, or nobody knows.`))
  if (adjustable === false) notes.push(practice('heater-fixed', phrase`Set at the works: its temperature cannot be changed.`))
  return notes
}
