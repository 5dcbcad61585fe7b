import type { z } from 'zod'
import type { PageFault } from '../../web/pages/page-fault.ts'
import type { Ctx } from '../context.ts'
import { problemBody, ProblemError } from '../http/problem.ts'
import { fieldErrors } from '../http/valid.ts'

/** Text fields of a posted form; files and repeated fields are left out. Errors: ProblemError 400 where it is cut off or no form at all. */
export async function formOf(c: Ctx): Promise<Record<string, string>> {
  const body = await c.req.parseBody().catch(() => {
    throw new ProblemError(
      problemBody(400, 'malformed', 'The form did not arrive whole. Nothing of it was stored: go back and send it again.'),
    )
  })
  return Object.fromEntries(Object.entries(body).flatMap(([key, value]) => (typeof value === 'string' ? [[key, value]] : [])))
}

/** What a validator says of a form, as the page shows it. `names` gives the form's name of a field that has another in the schema. */
export function faultsOf(error: z.ZodError, names: Record<string, string> = {}): PageFault[] {
  return fieldErrors(error.issues, '').map(({ field, message }) => ({ field: names[field] ?? field, message }))
}
