/**
 * The answer of a rule that may refuse. Refusals are values with a `code` from a closed union; throwing is for bugs.
 *
 * @example const r = waterVolume(inside); if (!r.ok) return r; r.value
 */
export type Result<Value, Refusal extends { code: string }> = { ok: true; value: Value } | { ok: false; refusal: Refusal }

export const ok = <Value>(value: Value): { ok: true; value: Value } => ({ ok: true, value })
export const refuse = <Refusal extends { code: string }>(refusal: Refusal): { ok: false; refusal: Refusal } => ({ ok: false, refusal })
