/** SI Brochure, 9th edition: exact. */
const [PLANCK, LIGHT_SPEED, AVOGADRO] = [6.62607015e-34, 299_792_458, 6.02214076e23]
/** lm/W at 540 THz: exact; V(λ) is 1 there and at 555 nm. */
const LUMENS_PER_WATT = 683
/** Energy of a micromole of photons of one nanometre, J·nm. */
export const JOULE_NM = PLANCK * LIGHT_SPEED * AVOGADRO * 1e9 * 1e-6
/** CIE 1924 photopic V(λ) at 450 and 660 nm; from memory. */
const V = { 450: 0.038, 555: 1, 660: 0.061 } as const

export const umolPerJoule = (nm: number): number => nm / JOULE_NM
export const luxPerUmol = (nm: keyof typeof V): number => (LUMENS_PER_WATT * V[nm]) / umolPerJoule(nm)
