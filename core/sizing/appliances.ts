import { APPLIANCE_NAMES, nameInText } from '../catalog/appliance-names.ts'
import { APPLIANCE_KINDS, type Appliance, type ApplianceKind, type Gear } from './gear.ts'
import { namesOf } from './make-finding.ts'
import { drawnOf, type Drawn } from './energy.ts'
import { exactly, type Span, sumOf, times } from './span.ts'
import { APPLIANCE_POWER_W } from './typical-ranges.ts'

/** Share of its power that ends in the water: all of a pump's or lamp's that stands in it, none of what runs outside. Own. */
const HEAT_SHARE: Record<ApplianceKind, number> = {
  chiller: 0,
  air_pump: 0,
  circulation_pump: 1,
  skimmer: 1,
  co2: 0,
  uv: 1,
  battery_backup: 0,
}

/** Hours a day that it runs; null where the room or the mains decide, so that no yearly figure can be told. Common practice. */
const HOURS_A_DAY: Record<ApplianceKind, number | 'light' | null> = {
  chiller: null,
  air_pump: 24,
  circulation_pump: 24,
  skimmer: 24,
  co2: 'light',
  uv: 24,
  battery_backup: null,
}

export const appliancesOf = (gear: Pick<Gear, 'appliances'>): readonly Appliance[] => gear.appliances ?? []

/** Power of one kind of appliance and its count, W; the kind's typical range where none is stated. @example appliancePowerW(uvOf9W) // { low: 9, high: 9 } */
export function appliancePowerW({ kind, quantity, spec }: Appliance): Span {
  return times(spec.powerW === undefined ? APPLIANCE_POWER_W[kind] : exactly(spec.powerW), quantity)
}

/** All of them on at once, W. */
export const appliancesPowerW = (gear: Pick<Gear, 'appliances'>): Span => sumOf(appliancesOf(gear).map(appliancePowerW))

/** What of it warms the water, W. */
export const appliancesHeatW = (gear: Pick<Gear, 'appliances'>): Span =>
  sumOf(appliancesOf(gear).map((each) => times(appliancePowerW(each), HEAT_SHARE[each.kind])))

/** Words for each kind with an unstated power; `warming` asks only about those that warm the water. @example unstatedAppliances(gear) // ['power of the UV clarifier'] */
export function unstatedAppliances(gear: Pick<Gear, 'appliances'>, { warming = false } = {}): string[] {
  const open = appliancesOf(gear).filter(({ kind, spec }) => spec.powerW === undefined && (!warming || HEAT_SHARE[kind] > 0))
  return namesOf(open.map(({ kind }) => `power of the ${nameInText(APPLIANCE_NAMES[kind])}`))
}

/** What runs by the clock, one line a kind, over the whole range of an unstated power. A chiller's hours follow the room (`chillerYear`). */
export function runningAppliances(gear: Pick<Gear, 'appliances'>, lightHoursPerDay: number): Drawn[] {
  return APPLIANCE_KINDS.flatMap((kind): Drawn[] => {
    const hours = HOURS_A_DAY[kind]
    const power = sumOf(
      appliancesOf(gear)
        .filter((each) => each.kind === kind)
        .map(appliancePowerW),
    )
    if (hours === null || power.high === 0) return []
    return [drawnOf(APPLIANCE_NAMES[kind], power, hours === 'light' ? lightHoursPerDay : hours)]
  })
}
