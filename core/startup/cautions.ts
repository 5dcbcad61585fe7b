/** How the device is called where nobody knows the reader's country. */
const ANY_DEVICE = 'a protective device (GFCI or residual-current device)'

/** The usual cautions, once, for screen and paper alike. Source: common practice; the texts are reviewed together and edited only here. */
export interface Caution {
  id: CautionId
  title: string
  text: string
}
export type CautionId = 'bleach' | 'unplug' | 'lifting' | 'siphon' | 'stand' | 'leak_test' | 'protection' | 'maker'

export const CAUTIONS: readonly Caution[] = [
  {
    id: 'bleach',
    title: 'Bleach and ammonia',
    text: 'Never let bleach, acid or chlorine come near ammonia: the gas is poisonous. A used tank is bleached, rinsed, dechlorinated and dried, and only then meets ammonia. Use no liquid ammonia stronger than 10 %, and none with soap or scent.',
  },
  {
    id: 'unplug',
    title: 'Hands in the water',
    text: 'Unplug everything before hands go in. Switch the heater off and let it cool before the water level drops, and never lift a running heater out.',
  },
  {
    id: 'lifting',
    title: 'Lifting',
    text: 'Two people from 20 kg (44 lb) or 90 cm (3 ft) of length on, and more beyond 50 kg (110 lb), one for each 25 kg (55 lb). Gloves, and suction lifters for bare glass. Never move a tank with water in it.',
  },
  {
    id: 'siphon',
    title: 'Water that runs back',
    text: 'An air pump below the water line needs a check valve. With a canister or sump, water can run back when the power fails: a small hole near the water line in the pipe that returns it lets air in and stops that. Try it before you leave it alone: unplug the pump and watch that nothing overflows.',
  },
  {
    id: 'stand',
    title: 'Children, pets and cuts',
    text: 'Fix a tall stand to the wall and keep children and pets from climbing it. Wear gloves for glass edges, and keep cuts out of the water, salt water above all.',
  },
  {
    id: 'leak_test',
    title: 'Leak test',
    text: 'Test for leaks with water at room temperature, on the level stand. Where a leak would do harm, test it elsewhere first or catch the water. A cold fill fogs the glass: what counts is wet paper at a seam.',
  },
  {
    id: 'protection',
    title: 'Mains and floor',
    text: `Use ${ANY_DEVICE} and press its test button first. The local electrical code and a licensed electrician decide about wiring; a licensed structural engineer decides about the floor. A floor finding is a screening, never an approval.`,
  },
  {
    id: 'maker',
    title: 'The makers come first',
    text: "The makers' instructions come before this sheet. Where they differ, follow the maker.",
  },
]

/** The text of one caution. @example caution('maker') // "The makers' instructions come before this sheet. …" */
export function caution(id: CautionId): string {
  const found = CAUTIONS.find((each) => each.id === id)
  if (found === undefined) throw new Error(`No caution ${id}`)
  return found.text
}

/** The caution of mains and floor with the device by one name, that of the reader's country. @example protectionCaution('GFCI') // 'Use a GFCI and press its test button first. …' */
export const protectionCaution = (device: string): string => caution('protection').replace(ANY_DEVICE, `a ${device}`)

/** Enough of a text's end to tell it from all others. */
const ENDING_CHARS = 30

/**
 * What a caution is called, by how it ends: whichever name its device goes by, whichever unit is told first, in an earlier wording too. Undefined for a
 * text that is none of them.
 *
 * @example cautionTitle(protectionCaution('GFCI')) // 'Mains and floor'
 */
export const cautionTitle = (text: string): string | undefined =>
  CAUTIONS.find((each) => text.endsWith(each.text.slice(-ENDING_CHARS)))?.title
