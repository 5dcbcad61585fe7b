/**
 * Density of air-free pure water at one atmosphere.
 *
 * Units:  degrees Celsius (IPTS-68) in, kg/m³ out, unrounded. Range: 0 to 150 °C; outside it the polynomial is not fitted.
 * Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97, eq. (16).
 *
 * @example pureWaterDensity(20) // 998.2041
 */
export function pureWaterDensity(celsius: number): number {
  const t = celsius
  const top = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))))
  return top / (1 + 16.87985e-3 * t)
}

/**
 * Density of sea water at one atmosphere; with a salinity of 0, of fresh water.
 *
 * Units:  degrees Celsius (IPTS-68) and practical salinity (about g/kg) in, kg/m³ out, unrounded. Range: −2 to 40 °C, salinity 0 to 42.
 * Source: UNESCO EOS-80: Millero & Poisson, Deep-Sea Res. 28A (1981) 625; Fofonoff & Millard, UNESCO Tech. Papers in Marine Science 44 (1983).
 *
 * @example seaWaterDensity(35, 25) // 1023.34306
 */
export function seaWaterDensity(salinity: number, celsius: number): number {
  const t = celsius
  const pure = 999.842594 + t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))))
  const a = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)))
  const b = -5.72466e-3 + t * (1.0227e-4 + t * -1.6546e-6)
  return pure + a * salinity + b * salinity * Math.sqrt(salinity) + 4.8314e-4 * salinity * salinity
}
