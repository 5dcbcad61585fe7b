/** Below it a flow is laminar; from the second on it is turbulent. White, Fluid Mechanics, ch. 6, from memory. */
const LAMINAR_RE = 2300
const TURBULENT_RE = 4000

/** Haaland's explicit form, for turbulent flow. */
function haaland(reynolds: number, roughness: number): number {
  const root = -1.8 * Math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)
  return 1 / root ** 2
}

/**
 * Darcy friction factor of a round pipe.
 *
 * Units:  Reynolds number; roughness over bore; no unit out. Range: Reynolds above 0 to 1e8, roughness 0 to 0.05.
 * Errors: none. Between laminar and turbulent, where neither form holds, a straight line joins them, so that a solver meets no jump.
 * Source: 64/Re; S. E. Haaland, J. Fluids Eng. 105 (1983) 89, from memory: within 2 % of Colebrook.
 *
 * @example frictionFactor(1e5, 1e-4) // 0.01827
 */
export function frictionFactor(reynolds: number, roughness: number): number {
  if (reynolds <= LAMINAR_RE) return 64 / reynolds
  if (reynolds >= TURBULENT_RE) return haaland(reynolds, roughness)
  const laminar = 64 / LAMINAR_RE
  const share = (reynolds - LAMINAR_RE) / (TURBULENT_RE - LAMINAR_RE)
  return laminar + share * (haaland(TURBULENT_RE, roughness) - laminar)
}
