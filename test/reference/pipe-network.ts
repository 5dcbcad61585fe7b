import type { FlowSystem } from '../../core/sizing/flow-system.ts'
import type { PumpCurve } from '../../core/sizing/operating-point.ts'

/** Another way to the same flow: SI throughout, Colebrook in place of Haaland, the secant rule in place of halving. */

/** Colebrook's implicit equation by fixed-point steps on 1/√f (White, Fluid Mechanics, ch. 6, from memory). */
export function colebrook(reynolds: number, roughness: number): number {
  let root = 7
  for (let step = 0; step < 60; step++) root = -2 * Math.log10(roughness / 3.7 + (2.51 * root) / reynolds)
  return root ** -2
}

const GRAVITY = 9.80665
const ROUGHNESS_M = 1.5e-6

/** Pressure that a flow takes over what the pump gives, Pa at 1000 kg/m³, with the Reynolds number it comes with. */
function lacking(pump: PumpCurve, system: FlowSystem, speed: number): { pascals: number; reynolds: number } {
  const bore = system.boreMm / 1000
  const flow = speed * Math.PI * (bore / 2) ** 2
  const reynolds = (speed * bore) / system.viscosityM2S
  const friction = reynolds < 2300 ? 64 / reynolds : colebrook(reynolds, ROUGHNESS_M / bore)
  const dynamic = 500 * speed * speed
  const taken = dynamic * (friction * (system.lengthMm / system.boreMm) + system.fittings)
  const given = pump.maxHeadM * (1 - Math.pow((flow * 3.6e6) / pump.maxFlowLph, pump.bend))
  return { pascals: taken + 1000 * GRAVITY * (system.staticHeadM + system.mediaLoss * flow * flow - given), reynolds }
}

/** By the rule of Anderson & Björck (secant kept between two signs), over the speed in the hose. */
export function operatingFlowByNewton(pump: PumpCurve, system: FlowSystem): { flowLph: number; reynolds: number } {
  const area = Math.PI * (system.boreMm / 2000) ** 2
  if (system.staticHeadM >= pump.maxHeadM) return { flowLph: 0, reynolds: 0 }
  let [a, b] = [1e-9, pump.maxFlowLph / 3.6e6 / area]
  let [fa, fb] = [lacking(pump, system, a).pascals, lacking(pump, system, b).pascals]
  for (let step = 0; step < 500 && Math.abs(b - a) > 1e-12 * Math.abs(b); step++) {
    const c = step % 3 === 2 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa)
    const fc = lacking(pump, system, c).pascals
    if (fc * fb <= 0) [a, fa] = [b, fb]
    else fa *= Math.max(0.5, 1 - fc / fb)
    ;[b, fb] = [c, fc]
    if (fc === 0) break
  }
  return { flowLph: b * area * 3.6e6, reynolds: lacking(pump, system, b).reynolds }
}
