import type {
  AmmoniaSourceSpec,
  ConditionerSpec,
  FilterSpec,
  HeaterSpec,
  LidSpec,
  LightSpec,
  MatSpec,
  PowerSpec,
  StandSpec,
  SubstrateSpec,
  TankSpec,
  TestKitSpec,
  ThermometerSpec,
} from '../catalog/spec.ts'
import type { RoUnitSpec, SumpSpec } from '../catalog/appliance-spec.ts'
import type { LivestockSpec } from '../catalog/living-spec.ts'
import type { SaltMixSpec } from '../catalog/supply-spec.ts'

/** A spec, how many of it, and what a person calls it. */
export interface Counted<S> {
  name: string
  quantity: number
  spec: S
  /** Already owned, so used: the startup checklist asks its age. */
  owned?: boolean
}

/** What is plugged in at the tank beside heater, filter and light. */
export const APPLIANCE_KINDS = ['chiller', 'air_pump', 'circulation_pump', 'skimmer', 'co2', 'uv', 'battery_backup'] as const
export type ApplianceKind = (typeof APPLIANCE_KINDS)[number]

/** What every such thing has in common, and figures of single kinds. */
export interface ApplianceSpec {
  powerW?: number
  cordMm?: number
  /** Of a chiller: heat it takes out of the water. */
  coolingW?: number
  /** Of a circulation pump, in free water. */
  ratedFlowLph?: number
  /** Of a skimmer: the tank it is meant for. */
  ratedVolumeL?: number
  /** Of a skimmer: where it works, and so where its cord leaves. */
  place?: 'hang_on' | 'in_tank' | 'in_sump'
}
export interface Appliance extends Counted<ApplianceSpec> {
  kind: ApplianceKind
}

/** Everything a build physically is, kits taken apart, owned gear included. Prices play no part here. */
export interface Gear {
  tank: Counted<TankSpec> | null
  stand: Counted<StandSpec> | null
  mat: Counted<MatSpec> | null
  lid: Counted<LidSpec> | null
  filters: Counted<FilterSpec>[]
  heaters: Counted<HeaterSpec>[]
  lights: Counted<LightSpec>[]
  substrates: Counted<SubstrateSpec>[]
  conditioners: Counted<ConditionerSpec>[]
  testKits: Counted<TestKitSpec>[]
  power: Counted<PowerSpec>[]
  /** What the startup checklist doses and reads; no sizing check looks at them. Absent is none. */
  ammoniaSources?: Counted<AmmoniaSourceSpec>[]
  thermometers?: Counted<ThermometerSpec>[]
  /** Absent is none. */
  appliances?: Appliance[]
  /** The tank below the tank. Absent is none. */
  sump?: Counted<SumpSpec>
  /** Salt mixes. Absent is none. */
  salts?: Counted<SaltMixSpec>[]
  /** Reverse-osmosis units. Absent is none. */
  purifiers?: Counted<RoUnitSpec>[]
  /** Animals that are bought or already kept. Absent is none. */
  animals?: Counted<LivestockSpec>[]
  /** Slots answered "not needed" with their reason. */
  notNeeded: Partial<Record<string, string>>
}
