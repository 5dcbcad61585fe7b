import type {
  AirPumpSpec,
  BatteryBackupSpec,
  ChillerSpec,
  CirculationPumpSpec,
  Co2Spec,
  RoUnitSpec,
  SkimmerSpec,
  SumpSpec,
  TimerSpec,
  UvSpec,
} from './appliance-spec.ts'
import type { LivestockSpec, PlantSpec } from './living-spec.ts'
import type {
  BackgroundSpec,
  BacteriaSpec,
  FilterMediaSpec,
  FoodSpec,
  HardscapeSpec,
  PlumbingSpec,
  RefractometerSpec,
  SaltMixSpec,
  ServiceSpec,
  ToolSpec,
} from './supply-spec.ts'

import type { TankForm } from './tank-shape.ts'

/**
 * What a maker states about a product, in SI units, one shape a kind. A field that nobody entered is absent: it is unknown, never guessed here.
 * The validators with their limits are in schema.ts; the field table that forms and CSV import read is in spec-fields.ts.
 */
export interface TankSpec {
  /** Outside dimensions, of the box around it where it is not rectangular. */
  lengthMm: number
  widthMm: number
  heightMm: number
  /** Absent is rectangular. */
  shape?: TankForm
  /** Bow-front: how far the front's middle stands out before its ends. */
  bowMm?: number
  /** Corner with a cut front: depth of the short end on either back. */
  endMm?: number
  glassMm?: number
  bottomMm?: number
  material?: 'glass' | 'acrylic'
  style?: 'rimmed' | 'rimless' | 'braced'
  labelVolumeL?: number
  emptyMassKg?: number
}
/** A kit says only what its parts do not: the parts carry their own specs. */
export interface KitSpec {
  labelVolumeL?: number
}
export interface StandSpec {
  /** Of its top; absent is rectangular. */
  shape?: TankForm
  topLengthMm?: number
  topWidthMm?: number
  heightMm?: number
  ratedLoadKg?: number
  /** What touches the tank: a full board, or a frame under the edge only. */
  top?: 'full' | 'perimeter'
  /** What touches the floor. */
  base?: 'end_panels' | 'feet' | 'full'
  surface?: 'particle_board' | 'plywood' | 'solid_wood' | 'metal'
  massKg?: number
}
export interface MatSpec {
  lengthMm?: number
  widthMm?: number
  thicknessMm?: number
}
export interface LidSpec {
  /** Of the tank that it closes. Absent says nothing: it may be cut to any. */
  shape?: TankForm
  lengthMm?: number
  widthMm?: number
  cover?: 'glass' | 'plastic' | 'mesh'
}
export interface FilterSpec {
  type?: 'canister' | 'hang_on' | 'internal' | 'sponge' | 'return_pump'
  /** As printed: at no head, without media. */
  ratedFlowLph?: number
  /** What comes out of the return, as somebody measured it with its media. */
  measuredFlowLph?: number
  powerW?: number
  mediaVolumeL?: number
  /** Of the pump: the height at which nothing flows any more. */
  maxHeadM?: number
  /** One more point of the pump's curve, where the maker draws it: both or none. */
  midHeadM?: number
  midFlowLph?: number
  hoseMm?: number
  /** Both hoses together. */
  hoseLengthMm?: number
  fittings?: 'few' | 'usual' | 'many'
  cordMm?: number
}
export interface HeaterSpec {
  powerW?: number
  adjustable?: boolean
  externalController?: boolean
  lengthMm?: number
  cordMm?: number
}
export interface LightSpec {
  lengthMm?: number
  widthMm?: number
  powerW?: number
  luminousFluxLm?: number
  /** Photosynthetic photon flux, where the maker states it. */
  photonFluxUmolS?: number
  /** White, or red and blue for plants, of which lumens say next to nothing. */
  spectrum?: 'white' | 'coloured'
  dimmable?: boolean
  cordMm?: number
}
export interface SubstrateSpec {
  type?: 'gravel' | 'sand' | 'active_soil'
  packMassKg?: number
  packVolumeL?: number
}
export interface ConditionerSpec {
  packVolumeMl?: number
  /** Millilitres that treat one litre of tap water. */
  doseMlPerL?: number
  bindsAmmonia?: boolean
}
export interface AmmoniaSourceSpec {
  form?: 'ammonium_chloride' | 'ammonia_solution'
  /** Share of the active substance by mass: 1 for the pure salt, 0.1 for a 10 % solution. */
  strength?: number
  packMassG?: number
  packVolumeMl?: number
}
export interface TestKitSpec {
  measuresAmmonia?: boolean
  measuresNitrite?: boolean
  measuresNitrate?: boolean
  measuresPh?: boolean
  measuresKh?: boolean
  lowestAmmoniaMgL?: number
  tests?: number
}
export interface ThermometerSpec {
  type?: 'glass' | 'strip' | 'digital'
  alarm?: boolean
}
export interface PowerSpec {
  outlets?: number
  ratedCurrentA?: number
  /** A GFCI or residual-current device is built in. */
  protective?: boolean
  cordMm?: number
}

export interface SpecOf {
  tank: TankSpec
  kit: KitSpec
  stand: StandSpec
  mat: MatSpec
  lid: LidSpec
  filter: FilterSpec
  heater: HeaterSpec
  light: LightSpec
  substrate: SubstrateSpec
  conditioner: ConditionerSpec
  ammonia_source: AmmoniaSourceSpec
  test_kit: TestKitSpec
  thermometer: ThermometerSpec
  power: PowerSpec
  chiller: ChillerSpec
  air_pump: AirPumpSpec
  circulation_pump: CirculationPumpSpec
  skimmer: SkimmerSpec
  sump: SumpSpec
  co2: Co2Spec
  uv: UvSpec
  ro_unit: RoUnitSpec
  timer: TimerSpec
  battery_backup: BatteryBackupSpec
  filter_media: FilterMediaSpec
  hardscape: HardscapeSpec
  background: BackgroundSpec
  bacteria: BacteriaSpec
  salt_mix: SaltMixSpec
  refractometer: RefractometerSpec
  plumbing: PlumbingSpec
  tool: ToolSpec
  food: FoodSpec
  service: ServiceSpec
  plant: PlantSpec
  livestock: LivestockSpec
}
export type Spec = SpecOf[keyof SpecOf]
