/** Highest residual that a US public supply may carry, mg/L as Cl2, chlorine and chloramine alike. Source: 40 CFR 141.65. */
export const HIGHEST_RESIDUAL_MG_PER_L = 4

/** Nitrogen set free for one milligram of chloramine, as Cl2: 14.0067 / 70.906. */
const NITROGEN_PER_CHLORAMINE = 14.0067 / 70.906

/**
 * Ammonia left behind when chloramine is broken, as nitrogen.
 *
 * Units: mg/L as Cl2 in, mg/L as N out. Source: stoichiometry, one N for one Cl2.
 *
 * @example ammoniaFromChloramine(4) // 0.7902
 */
export const ammoniaFromChloramine = (residualMgPerL: number): number => residualMgPerL * NITROGEN_PER_CHLORAMINE
