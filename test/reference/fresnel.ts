/**
 * What a smooth face between two clear media throws back of unpolarised light: Fresnel's equations with Snell's law (Hecht, Optics, ch. 4, from memory).
 */
export function reflected(angle: number, index: number): number {
  const inside = Math.asin(Math.sin(angle) / index)
  const [a, b] = [Math.cos(angle), Math.cos(inside)]
  const across = ((a - index * b) / (a + index * b)) ** 2
  const along = ((index * a - b) / (index * a + b)) ** 2
  return (across + along) / 2
}

/** The same of light that comes from all sides as from a Lambertian lamp: weighted by sin 2θ, summed by the midpoint rule. */
export function reflectedDiffuse(index: number, steps = 20_000): number {
  let sum = 0
  for (let step = 0; step < steps; step++) {
    const angle = ((step + 0.5) / steps) * (Math.PI / 2)
    sum += reflected(angle, index) * Math.sin(2 * angle)
  }
  return (sum * Math.PI) / 2 / steps
}
