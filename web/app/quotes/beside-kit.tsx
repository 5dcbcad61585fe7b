import type { ReactElement } from 'react'
import type { Slot } from '../../../core/catalog/kinds.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'

const PLACES = [
  { value: 'instead', label: 'In place of the kit’s' },
  { value: 'beside', label: 'In addition to it' },
] as const

/** Whether a kit of the build brings something for the slot. */
export const kitFills = (build: Pick<WorkedBuild, 'rows'>, slot: Slot): boolean =>
  build.rows.some((row) => row.slot === slot && isKitPart(row))

// A part of an owned kit is told as owned, under the kit's own line.
const isKitPart = (row: WorkedBuild['rows'][number]): boolean => row.answer === 'in_kit'

/** What a line says of the kit's part; nothing where it takes its place. */
export const besideField = (beside: boolean): { besideKit?: true } => (beside ? { besideKit: true } : {})

/** The same line, standing beside the kit's part or in its place. */
export function withBeside<Line extends Exclude<BuildLine, { answer: 'not_needed' }>>(line: Line, beside: boolean): Line {
  const { besideKit: _, ...rest } = line
  return { ...rest, ...besideField(beside) } as Line
}

/** Two heaters, one of them the kit's: does the other take its place, or help it? */
export function BesideKit({ beside, onChange }: { beside: boolean; onChange: (beside: boolean) => void }): ReactElement {
  return (
    <ChoiceField
      label="The kit has one"
      value={beside ? 'beside' : 'instead'}
      options={PLACES}
      onChange={(value) => onChange(value === 'beside')}
    />
  )
}
