import type { ConditionField, Conditions } from './conditions.ts'
import type { Gear } from './gear.ts'
import type { SizingSubject } from './report.ts'

type Key = string | symbol

/** What of a build and its room something is about, by the keys there; of the defaults, by the fields that they stand for. */
export interface Keys {
  gear: Set<Key>
  conditions: Set<Key>
  assumed: Set<Key>
}

/** Something went over all of it, so that it hangs on every key, those included that are not there. */
const ALL = Symbol('all')

const noKeys = (): Keys => ({ gear: new Set(), conditions: new Set(), assumed: new Set() })

/** A subject whose reading is written down. */
export interface Watched {
  subject: SizingSubject
  /** Does a piece of work on the watched subject. What it is given ready-made was read before and is not among its keys. */
  during: <Made>(work: () => Made) => { made: Made; keys: Keys }
}

/**
 * The same build in the same room, telling which of their fields a piece of work looks at: what it never looked at cannot change what comes of it.
 *
 * Source: own. @example watched(subject).during(() => subject.conditions.floor).keys.conditions // has 'floor'
 */
export function watched({ gear, conditions }: SizingSubject): Watched {
  let keys = noKeys()
  const assumed = watchedDefaults(conditions.assumed, (field) => keys.assumed.add(field))
  const subject = {
    gear: watchedObject<Gear>(gear, (key) => keys.gear.add(key)),
    conditions: watchedObject<Conditions>({ ...conditions, assumed }, (key) => keys.conditions.add(key)),
  }
  const during: Watched['during'] = (work) => {
    keys = noKeys()
    return { made: work(), keys }
  }
  return { subject, during }
}

const watchedObject = <Whole extends object>(whole: Whole, read: (key: Key) => void): Whole =>
  new Proxy(whole, {
    get(target, key) {
      read(key)
      return Reflect.get(target, key) as unknown
    },
    has(target, key) {
      read(key)
      return Reflect.has(target, key)
    },
    ownKeys(target) {
      read(ALL)
      return Reflect.ownKeys(target)
    },
  })

/** Asked whether one of them is among them, the defaults tell of that one alone. */
const watchedDefaults = (assumed: ConditionField[], read: (key: Key) => void): ConditionField[] =>
  new Proxy(assumed, {
    get(target, key) {
      if (key !== 'includes') {
        read(ALL)
        return Reflect.get(target, key) as unknown
      }
      return (field: ConditionField) => {
        read(field)
        return target.includes(field)
      }
    },
  })

/** The fields in which two subjects differ. @example changeOf(subject, { ...subject, conditions: warmer }).conditions // has 'warmestRoomC' */
export function changeOf(from: SizingSubject, to: SizingSubject): Keys {
  const [before, after] = [from.conditions.assumed, to.conditions.assumed]
  const conditions = differing(from.conditions, to.conditions)
  conditions.delete('assumed')
  const assumed = before === after ? [] : [...before, ...after].filter((field) => before.includes(field) !== after.includes(field))
  return { gear: differing(from.gear, to.gear), conditions, assumed: new Set(assumed) }
}

function differing<Whole extends object>(from: Whole, to: Whole): Set<Key> {
  const found = new Set<Key>()
  if (from === to) return found
  for (const key of Object.keys({ ...from, ...to }) as Array<keyof Whole & string>) if (!Object.is(from[key], to[key])) found.add(key)
  return found
}

/** Whether something looked at what changed. @example touches({ … looked at the floor … }, { … the floor changed … }) // true */
export const touches = (read: Keys, changed: Keys): boolean =>
  meets(read.gear, changed.gear) || meets(read.conditions, changed.conditions) || meets(read.assumed, changed.assumed)

function meets(read: Set<Key>, changed: Set<Key>): boolean {
  if (changed.size === 0 || read.size === 0) return false
  if (read.has(ALL)) return true
  for (const key of changed) if (read.has(key)) return true
  return false
}
