import type { Env as HonoEnv, ValidationTargets } from 'hono'
import { validator } from 'hono-openapi'
import type { z } from 'zod'
import type { FieldError } from './problem.ts'
import { problem } from './problem.ts'

interface Issue {
  message: string
  path?: ReadonlyArray<PropertyKey | { key: PropertyKey }> | undefined
}

const stepName = (step: PropertyKey | { key: PropertyKey }): string => String(typeof step === 'object' ? step.key : step)

/** A validator's complaints as fields: `need.lengthMm`, `builds.0.lines.2.quantity`. Says nothing of what was sent: it may be a password. */
export function fieldErrors(issues: readonly Issue[], target: string): FieldError[] {
  return issues.slice(0, 50).map((issue) => ({ field: (issue.path ?? []).map(stepName).join('.') || target, message: issue.message }))
}

/** The messages name their fields in words. */
function detailOf(errors: readonly FieldError[]): string {
  const fields = new Set(errors.map(({ field }) => field)).size
  return fields === 1 ? (errors[0]?.message ?? 'A field needs correcting.') : `${fields} fields need correcting.`
}

/** Reads one part of a request by a schema; refuses with 422 and the fields. The schema also describes the part in the OpenAPI document. */
export function valid<Target extends keyof ValidationTargets, Schema extends z.ZodType>(target: Target, schema: Schema) {
  return validator<Schema, Target, HonoEnv, string>(
    target,
    schema,
    (result, c) => {
      if (result.success) return undefined
      const errors = fieldErrors(result.error, target === 'json' ? 'body' : target)
      return problem(c, 422, 'invalid', detailOf(errors), errors)
    },
    { options: { io: 'input' } },
  )
}
