import type * as z from 'zod'
import { LIVESTOCK_FIELDS } from '../catalog/livestock-fields.ts'
import { fieldShape, oneOf, strict, text, yesNo } from '../schema.ts'
import type { LivestockGroup } from '../sizing/conditions.ts'

type Figures = Pick<
  LivestockGroup,
  'lowestC' | 'targetC' | 'highestC' | 'dangerC' | 'flowFloorPerHour' | 'smallestVolumeL' | 'feedGramsPerDay'
>
/** The rows of the table are the group's figures; the ceiling, which may be none, stands below. */
const { flowCeilingPerHour, ...figures } = fieldShape(LIVESTOCK_FIELDS, 'a livestock group') as unknown as {
  [Key in keyof Figures]: z.ZodType<number, number>
} & { flowCeilingPerHour: z.ZodOptional<z.ZodType<number, number>> }

function inOrder(group: Figures & { flowCeilingPerHour: number | null }, context: z.RefinementCtx): void {
  const fault = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message })
  const { lowestC, targetC, highestC, dangerC, flowFloorPerHour, flowCeilingPerHour: most } = group
  if (targetC < lowestC) fault('targetC', `Target is ${targetC} °C, below the lowest safe, ${lowestC} °C. Enter at least ${lowestC} °C.`)
  if (highestC < targetC)
    fault('highestC', `Highest comfortable is ${highestC} °C, below the target, ${targetC} °C. Enter at least ${targetC} °C.`)
  if (dangerC <= highestC)
    fault('dangerC', `Danger mark is ${dangerC} °C, and comfort reaches to ${highestC} °C. Enter more than ${highestC} °C.`)
  if (most !== null && most < flowFloorPerHour)
    fault(
      'flowCeilingPerHour',
      `Most turnover is ${most} an hour, below the least, ${flowFloorPerHour}. Enter at least ${flowFloorPerHour}, or leave it empty.`,
    )
}

/** A livestock group as a manager enters it. Its source is asked for: whoever reads a finding must be able to judge it. */
export const LivestockGroupInput = strict('Livestock group', {
  name: text('Name', 1, 120),
  examples: text('Examples', 0, 500).default(''),
  ...figures,
  flowCeilingPerHour: flowCeilingPerHour
    .nullable()
    .default(null)
    .transform((value) => value ?? null),
  lidNeeded: yesNo('Lid needed'),
  water: oneOf('Water', ['fresh', 'salt']),
  source: text('Source', 3, 500),
}).superRefine(inOrder)
export type LivestockGroupInput = z.output<typeof LivestockGroupInput>
