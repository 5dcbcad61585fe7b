/** Specs of what runs on mains or keeps it running, beside filter, heater and light. SI units; an absent field is unknown. */
/** The second tank below the first, that its water overflows into and a return pump lifts it from. */
export interface SumpSpec {
  /** Outside. */
  lengthMm?: number
  widthMm?: number
  heightMm?: number
  /** Of walls and bottom. */
  wallMm?: number
  material?: 'glass' | 'acrylic'
  /** To its rim. */
  totalVolumeL?: number
  /** While the return pump runs. */
  operatingVolumeL?: number
}
export interface ChillerSpec {
  /** Electrical. */
  powerW?: number
  /** Heat it takes out of the water. */
  coolingW?: number
  /** As printed; no check reads it. */
  ratedVolumeL?: number
  leastFlowLph?: number
  mostFlowLph?: number
  hoseMm?: number
  cordMm?: number
}
export interface AirPumpSpec {
  powerW?: number
  airFlowLph?: number
  airOutlets?: number
  /** Deepest water it still blows air into. */
  mostDepthMm?: number
  /** A valve that keeps water out of the pump comes with it. */
  checkValve?: boolean
  cordMm?: number
}
export interface CirculationPumpSpec {
  /** As printed: in free water. */
  ratedFlowLph?: number
  powerW?: number
  controllable?: boolean
  cordMm?: number
}
export interface SkimmerSpec {
  place?: 'hang_on' | 'in_tank' | 'in_sump'
  ratedVolumeL?: number
  airFlowLph?: number
  powerW?: number
  cordMm?: number
}
export interface Co2Spec {
  type?: 'pressurised' | 'fermenting' | 'acid'
  /** Gas in a full bottle. */
  gasMassG?: number
  /** A valve that closes by itself when its power is switched off. */
  solenoid?: boolean
  powerW?: number
  cordMm?: number
}
export interface UvSpec {
  powerW?: number
  mostFlowLph?: number
  ratedVolumeL?: number
  lampHours?: number
  cordMm?: number
}
export interface RoUnitSpec {
  outputLPerDay?: number
  /** Litres that go down the drain for one litre made. */
  wasteRatio?: number
  stages?: number
  /** A resin stage takes out what the membrane lets through. */
  deionising?: boolean
}
export interface TimerSpec {
  type?: 'mechanical' | 'digital'
  outlets?: number
  ratedPowerW?: number
  /** Stated to switch motors and electronic drivers, not heating loads alone. */
  motorRated?: boolean
}
export interface BatteryBackupSpec {
  type?: 'air_pump' | 'mains'
  energyWh?: number
  outputW?: number
  cordMm?: number
}
