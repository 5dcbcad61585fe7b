declare module 'psychrolib' {
  const psychrolib: {
    SI: number
    SetUnitSystem(system: number): void
    GetSatVapPres(celsius: number): number
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pascal: number): number
    GetSatHumRatio(celsius: number, pascal: number): number
    /** kg of moist air in a cubic metre. */
    GetMoistAirDensity(celsius: number, humidityRatio: number, pascal: number): number
    /** Cubic metres of moist air that hold a kilogram of dry air. */
    GetMoistAirVolume(celsius: number, humidityRatio: number, pascal: number): number
    GetTDewPointFromRelHum(celsius: number, relativeHumidity: number): number
  }
  export default psychrolib
}
