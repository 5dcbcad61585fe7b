import { sayDate, yearOf, type CivilDate } from '../dates.ts'
import { SLOT_NAMES, SLOT_PLAIN_NAMES, SLOTS } from '../catalog/kinds.ts'
import { sayMoney } from '../money.ts'
import { compareBuilds, NOTHING, type BuildChange } from './compare-builds.ts'
import type { AssembledBuild, QuoteInputs } from './revision.ts'

/** What is otherwise than in the version before, as the customer reads it. */
export interface SinceBefore {
  /** "version 1 of Nov 20". */
  version: string
  /** Every build in a few words: "A is $30.00 less, B as it was." */
  inShort: string
  /** What became of each build that is otherwise. */
  builds: Array<{ letter: string; name: string; changes: string[] }>
}

interface Issued {
  revision: number
  issuedOn: CivilDate
  builds: AssembledBuild[]
  inputs: QuoteInputs
}

/**
 * What was added, taken out, and changed in price or count since the version before, and what that does to each total. Verdicts and what is expected by a
 * day stand in the document itself. Null where both are not in one currency: no sum can be held against the other.
 *
 * Units: minor units. Source: own.
 *
 * @example sinceBefore(version1, version2)?.inShort // 'A is $30.00 less, B as it was.'
 */
export function sinceBefore(before: Issued, after: Omit<Issued, 'revision'>): SinceBefore | null {
  const { install, stores } = after.inputs
  const { currency } = install
  if (before.inputs.install.currency !== currency) return null
  const thisYear = yearOf(after.issuedOn)
  const known = [...stores, ...before.inputs.stores]
  const builds = compareBuilds(before.builds, after.builds, { currency, stores: known, thisYear }).map(({ letter, name, changes }) => ({
    letter,
    name,
    short: `${sayLetter(changes, letter, after)} ${sayShort(changes, letter, before, after, currency)}`,
    changes: changes.flatMap(sayChange),
  }))
  return {
    version: `version ${before.revision} of ${sayDate(before.issuedOn, thisYear)}`,
    inShort: `${builds.map(({ short }) => short).join(', ')}.`,
    builds: builds.flatMap(({ letter, name, changes }) => (changes.length === 0 ? [] : [{ letter, name, changes }])),
  }
}

/** Letters move up where a build before them is taken out. @example sayLetter([], 'A', after) // 'A' */
function sayLetter(changes: BuildChange[], letter: string, after: Pick<Issued, 'builds'>): string {
  const moved = changes.find(isMove)
  if (moved) return `${letter} (it was ${moved.was})`
  const isGone = changes.some(({ part, now }) => part === 'build' && now === 'was taken out')
  return isGone && after.builds.some((build) => build.letter === letter) ? `the former ${letter}` : letter
}

const isMove = ({ part, what }: BuildChange): boolean => part === 'build' && what === 'Letter'

function sayShort(changes: BuildChange[], letter: string, before: Issued, after: Pick<Issued, 'builds'>, currency: string): string {
  const whole = changes.find((change) => change.part === 'build' && !isMove(change))
  if (whole) return whole.was === NOTHING ? 'is new' : 'was taken out'
  const now = after.builds.find((build) => build.letter === letter)
  const was = before.builds.find(({ id }) => id === now?.id)
  const told = changes.some((change) => !isMove(change) && sayChange(change).length > 0)
  if (!now?.cost.today.complete || !was?.cost.today.complete) return told ? 'is changed' : 'as it was'
  const gap = now.cost.today.totalMinor - was.cost.today.totalMinor
  if (gap === 0) return told ? 'is changed and costs the same' : 'as it was'
  return `is ${sayMoney(Math.abs(gap), currency)} ${gap < 0 ? 'less' : 'more'}`
}

/** @example sayChange({ part: 'line', what: 'Heat', was: 'nothing', now: 'Torvane 100 W' }) // ['Heater, added: Torvane 100 W.'] */
function sayChange({ part, what, was, now }: BuildChange): string[] {
  switch (part) {
    case 'line':
      if (was === NOTHING) return [`${plainName(what)}${now.startsWith('not needed') ? '' : ', added'}: ${now}.`]
      if (now === NOTHING) return [`${plainName(what)}, taken out: ${was}.`]
      return [`${plainName(what)}: ${sayPlaced(now, was)}.`]
    case 'price':
      return [`Price of ${what}: ${now}; it was ${was}.`]
    case 'total':
      return was === NOTHING ? [`Total today: ${now}.`] : [`Total today: ${now}; it was ${was}.`]
    case 'build':
      return what === 'Letter'
        ? [`It was build ${was}.`]
        : was === NOTHING
          ? ['The whole build is new.']
          : [`The whole build was taken out; it was ${was}.`]
    case 'expected':
    case 'check':
      return []
  }
}

/** What stands in place of what; of more or fewer of one product the counts alone. @example sayPlaced('Torvane 100 W', '2 × Torvane 100 W') // '1 Torvane 100 W in place of 2' */
function sayPlaced(now: string, was: string): string {
  const [many, before] = [countedOf(now), countedOf(was)]
  return many.name === before.name && many.count !== before.count
    ? `${many.count} ${many.name} in place of ${before.count}`
    : `${now}, in place of ${was}`
}

function countedOf(text: string): { count: string; name: string } {
  const [, count = '1', name = text] = /^(?:(\d+) × )?(.*)$/s.exec(text) ?? []
  return { count, name }
}

/** The desk names a slot by what it does, a customer by what it is. @example plainName('Heat') // 'Heater' */
const plainName = (what: string): string => {
  const slot = SLOTS.find((each) => SLOT_NAMES[each] === what)
  return slot === undefined ? what : SLOT_PLAIN_NAMES[slot]
}
