import type {
  ConditionerSpec, FilterSpec, HeaterSpec, LidSpec, LightSpec, MatSpec, PowerSpec, StandSpec, SubstrateSpec, TankSpec, TestKitSpec,
} from '../catalog/spec.ts'

/** A spec, how many of it, and what a person calls it. */
export interface Counted<S> {
  name: string
  quantity: number
  spec: S
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
  /** Slots answered "not needed" with their reason. */
  notNeeded: Partial<Record<string, string>>
}
