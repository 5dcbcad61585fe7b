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

/** A spec, how many of it, and what a person calls it. */
export interface Counted<S> {
  name: string
  quantity: number
  spec: S
  /** Already owned, so used: the startup checklist asks its age. */
  owned?: boolean
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
  /** Slots answered "not needed" with their reason. */
  notNeeded: Partial<Record<string, string>>
}
