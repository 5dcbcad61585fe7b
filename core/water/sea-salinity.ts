/** Practical salinity that a tank's water is reckoned with: none in fresh water, that of the open ocean in salt water. */
export const SALINITY = { fresh: 0, salt: 35 } as const
