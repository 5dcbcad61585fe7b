import { phrase, quantity } from '../units/quantity.ts'
import { livingNotes } from './living-notes.ts'
import { airPumpNote, practice, type NotedProduct, type SpecNote } from './spec-note.ts'

/** Ammonia water past this share burns eyes and lungs: none is for a home. Common practice. */
const STRONGEST_AMMONIA = 0.1

type SpecOfKind<K extends NotedProduct['kind']> = Extract<NotedProduct, { kind: K }>['spec']
/** One note where something holds, else none. */
const where = (holds: boolean, note: SpecNote): SpecNote[] => (holds ? [note] : [])

/**
 * Notes of what goes into the water, and of what moves, cools, feeds or clears it.
 *
 * @example waterNotes({ kind: 'substrate', spec: { type: 'active_soil' } }).map(({ id }) => id) // ['substrate-active']
 */
export function waterNotes(product: NotedProduct): SpecNote[] {
  switch (product.kind) {
    case 'substrate':
      return substrateNotes(product.spec)
    case 'conditioner':
      return where(
        product.spec.bindsAmmonia === false,
        practice('conditioner-chlorine', phrase`For chlorine. Where the tap carries chloramine it leaves ammonia behind.`),
      )
    case 'ammonia_source':
      return ammoniaNotes(product.spec)
    case 'salt_mix':
      return [
        practice('salt-ahead', phrase`Mix it in a bucket and let it run for a day. Never pour it into a tank with animals in it.`),
        ...where(
          product.spec.gramsPerL === undefined,
          practice('salt-label', phrase`Its label states no grams for a litre: the usual range is reckoned with.`),
        ),
      ]
    case 'refractometer':
      return where(
        product.spec.seaWaterScale === false,
        practice('refractometer-scale', phrase`Made for table salt: it reads sea water wrong unless it is set by a sea water standard.`),
      )
    case 'ro_unit':
      return [practice('ro-watched', phrase`Stay beside it while it fills, or fit a float valve: it never stops by itself.`)]
    case 'bacteria':
      return where(product.spec.keptCold === true, practice('bacteria-cold', phrase`Keep it in a fridge until it is used.`))
    case 'hardscape':
      return hardscapeNotes(product.spec)
    case 'background':
      return where(
        product.spec.type === 'film',
        practice('background-first', phrase`Goes on the outside before the tank stands at the wall.`),
      )
    default:
      return applianceNotes(product)
  }
}

function substrateNotes({ type }: SpecOfKind<'substrate'>): SpecNote[] {
  if (type === 'active_soil')
    return [
      practice(
        'substrate-active',
        phrase`Do not rinse it. It gives off ammonia: dose none until its own is under ${quantity(1, 'mg/L', 0)}, and change water daily above ${quantity(4, 'mg/L', 0)}.`,
      ),
    ]
  return where(
    type === 'sand',
    practice('substrate-sand', phrase`Rinse it in small lots, and keep the pump off while it settles: sand wears pumps out.`),
  )
}

function ammoniaNotes({ form, strength }: SpecOfKind<'ammonia_source'>): SpecNote[] {
  const solution = form === 'ammonia_solution'
  return [
    ...where(solution, practice('ammonia-bleach', phrase`Never near bleach, acid or chlorine: toxic gas. Gloves, glasses, fresh air.`)),
    ...where(
      solution && strength !== undefined && strength > STRONGEST_AMMONIA,
      practice('ammonia-strong', phrase`Stronger than 10 %: not for a home.`),
    ),
  ]
}

function hardscapeNotes({ type, raisesHardness }: SpecOfKind<'hardscape'>): SpecNote[] {
  return [
    ...where(raisesHardness === true, practice('hardscape-lime', phrase`Gives off lime: not for animals of soft water.`)),
    ...where(type === 'wood', practice('hardscape-wood', phrase`Soak it until it sinks. It may tint the water for weeks.`)),
  ]
}

function applianceNotes(product: NotedProduct): SpecNote[] {
  switch (product.kind) {
    case 'chiller':
      return [
        practice('chiller-air', phrase`Gives its heat to the room: leave air around it, never in a closed cabinet.`),
        practice('chiller-cost', phrase`Not in the running cost: its hours follow the room.`),
      ]
    case 'air_pump':
      return where(product.spec.checkValve !== true, airPumpNote('air-pump-valve', 'The pump'))
    case 'co2':
      return co2Notes(product.spec)
    case 'uv':
      return [practice('uv-eyes', phrase`Never look into the lamp. Unplug it before it is opened.`)]
    case 'timer':
      return where(
        product.spec.motorRated !== true,
        practice('timer-load', phrase`Only for what its label names: many timers do not switch pumps and light drivers.`),
      )
    case 'battery_backup':
      return [
        practice(
          'backup-trial',
          phrase`Try it: pull the plug of the strip and see that it starts. No battery of this size carries a heater.`,
        ),
      ]
    default:
      return livingNotes(product)
  }
}

function co2Notes({ type }: SpecOfKind<'co2'>): SpecNote[] {
  return [
    ...where(
      type === 'pressurised',
      practice('co2-bottle', phrase`Gas under pressure: the bottle stands upright and fixed, away from heat, in a room that is aired.`),
    ),
    practice('co2-night', phrase`Too much stuns fish. Begin low, watch them, and shut it off at night.`),
  ]
}
