/** Moves words apart so that none overlap, kept between top and bottom; where they do not all fit, they share the room evenly. */
export function spread(levels: readonly number[], heights: readonly number[], top: number, bottom: number): number[] {
  const needed = heights.reduce((sum, height) => sum + height, 0)
  const share = needed > bottom - top ? (bottom - top) / needed : 1
  const order = levels
    .map((y, index) => ({ y, index, height: (heights[index] ?? 0) * share }))
    .sort((a, b) => a.y - b.y || a.index - b.index)
  let least = top
  for (const entry of order) {
    entry.y = Math.max(entry.y, least)
    least = entry.y + entry.height
  }
  let most = bottom
  for (const entry of order.toReversed()) {
    entry.y = Math.min(entry.y, most - entry.height)
    most = entry.y
  }
  const out: number[] = []
  for (const entry of order) out[entry.index] = entry.y
  return out
}
