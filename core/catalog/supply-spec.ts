/** Specs of what is used up, laid in, held in the hand, or done by somebody. SI units; an absent field is unknown. */
export interface FilterMediaSpec {
  type?: 'sponge' | 'floss' | 'ceramic' | 'carbon' | 'resin'
  packVolumeL?: number
  packMassKg?: number
  lifeDays?: number
}
export interface HardscapeSpec {
  type?: 'rock' | 'dry_rock' | 'wood' | 'ornament'
  packMassKg?: number
  /** Longest side of the largest piece. */
  lengthMm?: number
  /** Gives off lime: fizzes under a drop of vinegar. */
  raisesHardness?: boolean
}
export interface BackgroundSpec {
  type?: 'film' | 'relief'
  lengthMm?: number
  heightMm?: number
  thicknessMm?: number
}
export interface BacteriaSpec {
  form?: 'liquid' | 'powder'
  packVolumeMl?: number
  treatsL?: number
  keptCold?: boolean
}
export interface SaltMixSpec {
  packMassKg?: number
  /** Grams of mix for a litre of water of salinity 35. */
  gramsPerL?: number
}
export interface RefractometerSpec {
  type?: 'optical' | 'digital' | 'swing_arm'
  seaWaterScale?: boolean
  temperatureCompensated?: boolean
}
export interface PlumbingSpec {
  type?: 'hose' | 'valve' | 'check_valve' | 'bulkhead' | 'overflow' | 'fitting'
  insideMm?: number
  lengthMm?: number
}
export interface ToolSpec {
  type?: 'siphon' | 'net' | 'scraper' | 'tweezers' | 'scissors' | 'bucket' | 'other'
  lengthMm?: number
  volumeL?: number
}
export interface FoodSpec {
  form?: 'flakes' | 'pellets' | 'tablets' | 'frozen' | 'powder'
  packMassG?: number
  /** Share of protein by mass. */
  protein?: number
}
export interface ServiceSpec {
  type?: 'delivery' | 'installation' | 'drilling' | 'other'
  durationMin?: number
  atHome?: boolean
}
