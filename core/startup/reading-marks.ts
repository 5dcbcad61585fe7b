import type { Reading } from '../quote/quote-view.ts'
import { phrase, quantity, type Phrase, type Quantity, type Unit } from '../units/quantity.ts'
import { caution } from './cautions.ts'
import { READY_MG_PER_L } from './ready-reading.ts'
import type { ReadingMarks } from './setup-plan.ts'
import type { StartupSubject } from './startup-subject.ts'
import { isHeated, limitC, readC } from './temperatures.ts'

/** Of a plan that states none. Chemistry: common practice. Temperatures: own, what most groups share; a false alarm asks, silence kills. */
export const GENERAL_MARKS: ReadingMarks = {
  ammoniaMgL: 5,
  nitriteMgL: 5,
  lowestPh: 6.5,
  lowestKhDegrees: 3,
  lowestC: 18,
  dangerC: 32,
  heated: true,
}

/** What the steps tell to do at a mark, and the warning after a reading again: in one set of words. */
export const AT_MARK = {
  ammonia: 'change half the water and dose nothing.',
  nitrite: 'dose nothing; change a third of the water if it stays there three days.',
  soft: 'stop dosing and ask: soft water can stall the cycle.',
  fishInIt: 'change half the water today, feed nothing, test tomorrow.',
} as const

/** The marks of one tank: its animals' temperatures, common practice for the rest. @example readingMarks(subject).dangerC // 32 */
export function readingMarks(subject: StartupSubject): ReadingMarks {
  const { lowestC, highestC, dangerC } = subject.conditions.livestock
  return { ...GENERAL_MARKS, lowestC, highestC, dangerC, heated: isHeated(subject) }
}

export interface ReadingWarning {
  mark: 'ammonia' | 'nitrite' | 'ph' | 'kh' | 'too_warm' | 'too_cold'
  /** "Ammonia reads 6 mg/L. Stop at 5 mg/L." */
  found: Phrase
  /** What to do now, as the steps tell it. */
  todo: Phrase
  /** Where hands will go near water or mains. */
  caution: string | null
}

/** A figure with the places it was read with, two at most. @example figureAsRead(0.25, 'mg/L').digits // 2 */
export function figureAsRead(value: number, unit: Unit): Quantity {
  const digits = [0, 1, 2].find((places) => Number(value.toFixed(places)) === Number(value.toFixed(2))) ?? 2
  return quantity(value, unit, digits)
}

/**
 * What a water test says that must not be passed over: each figure beyond a mark, with what to do.
 *
 * Units:  mg/L, °C, German degrees. Errors: none; what was not tested warns of nothing.
 * Source: the steps of the plan (common practice). With fish in the tank ammonia and nitrite stop at what is ready, 0.25 mg/L.
 *
 * @example readingWarnings({ …, ammoniaMgL: 6 }, marks).map(({ mark }) => mark) // ['ammonia']
 */
export function readingWarnings(reading: Omit<Reading, 'id' | 'takenOn' | 'note'>, marks: ReadingMarks, fishIn = false): ReadingWarning[] {
  return [...poisons(reading, marks, fishIn), ...softness(reading, marks), ...temperature(reading, marks)]
}

function poisons({ ammoniaMgL, nitriteMgL }: Pick<Reading, 'ammoniaMgL' | 'nitriteMgL'>, marks: ReadingMarks, fishIn: boolean) {
  const out: ReadingWarning[] = []
  const warn = (mark: 'ammonia' | 'nitrite', name: string, value: number, limit: string) =>
    out.push({
      mark,
      found: phrase`${name} reads ${figureAsRead(value, 'mg/L')}. ${limit}`,
      todo: [capital(fishIn ? AT_MARK.fishInIt : AT_MARK[mark])],
      caution: caution('unplug'),
    })
  const withFish = `With fish in the tank ${READY_MG_PER_L} mg/L is the most.`
  if (ammoniaMgL !== null && (fishIn ? ammoniaMgL > READY_MG_PER_L : ammoniaMgL >= marks.ammoniaMgL))
    warn('ammonia', 'Ammonia', ammoniaMgL, fishIn ? withFish : `Stop at ${marks.ammoniaMgL} mg/L.`)
  if (nitriteMgL !== null && nitriteMgL > (fishIn ? READY_MG_PER_L : marks.nitriteMgL))
    warn('nitrite', 'Nitrite', nitriteMgL, fishIn ? withFish : `Stop above ${marks.nitriteMgL} mg/L.`)
  return out
}

function softness({ ph, khDegrees }: Pick<Reading, 'ph' | 'khDegrees'>, marks: ReadingMarks): ReadingWarning[] {
  const todo = phrase`${capital(AT_MARK.soft)}`
  return [
    ...(ph !== null && ph < marks.lowestPh
      ? [{ mark: 'ph' as const, found: phrase`pH reads ${figureAsRead(ph, 'share')}. Stop under ${marks.lowestPh}.`, todo, caution: null }]
      : []),
    ...(khDegrees !== null && khDegrees < marks.lowestKhDegrees
      ? [
          {
            mark: 'kh' as const,
            found: phrase`KH reads ${figureAsRead(khDegrees, 'dKH')}. Stop under ${figureAsRead(marks.lowestKhDegrees, 'dKH')}.`,
            todo,
            caution: null,
          },
        ]
      : []),
  ]
}

function temperature({ temperatureC }: Pick<Reading, 'temperatureC'>, { lowestC, dangerC, heated }: ReadingMarks): ReadingWarning[] {
  if (temperatureC === null) return []
  const reads = phrase`The water reads ${readC(temperatureC)}. `
  if (temperatureC >= dangerC) {
    return [
      {
        mark: 'too_warm',
        found: phrase`${reads}Never at or above ${limitC(dangerC)}.`,
        todo: heated
          ? phrase`Unplug the heater first. Open the lid, let the room cool, read again in an hour. Do not use that heater again before it was looked at.`
          : phrase`Any light off, lid open, and cool the room. Read again in an hour.`,
        caution: caution('unplug'),
      },
    ]
  }
  if (temperatureC >= lowestC) return []
  return [
    {
      mark: 'too_cold',
      found: phrase`${reads}Never below ${limitC(lowestC)}.`,
      todo: heated
        ? phrase`Look whether the protection has tripped and whether the heater has power and is set right. Warm it slowly: no hot water.`
        : phrase`No heater holds it. Warm the room, and ask about a heater before any animal goes in.`,
      caution: caution('unplug'),
    },
  ]
}

const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1)
