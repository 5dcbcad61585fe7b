declare module 'psychrolib' {
  const psychrolib: { SI: number; SetUnitSystem(system: number): void; GetSatVapPres(celsius: number): number }
  export default psychrolib
}
