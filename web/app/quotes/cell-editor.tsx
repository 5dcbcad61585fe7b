import { useCallback, useEffect, useMemo, useRef, useState, type ReactElement } from 'react'
import { SLOT_NAMES, type Slot } from '../../../core/catalog/kinds.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { late } from '../parts/late.tsx'
import { useDesk, useDialog } from './desk-context.ts'
import { focusSlot } from './desk-focus.ts'
import { LineForm } from './line-form.tsx'
import { sayWant, type Want } from './meets-want.ts'
import { NotNeededForm } from './not-needed-form.tsx'
import { OurServices } from './our-services.tsx'
import { HoldAnswer, type PutAnswer } from './pending-answer.ts'
import { ProductSearch } from './product-search.tsx'
import { ProposedPacks, type PackProposal } from './proposed-packs.tsx'

const OwnedForm = late('the form', async () => (await import('./owned-form.tsx')).OwnedForm)

/** One slot of one build: what fills it now, and what may fill it instead. */
export function CellEditor(): ReactElement {
  const { builds } = useDesk()
  const { shown: cell, close } = useDialog('cell')
  const build = builds.find((one) => one.id === cell?.buildId)
  const shown = cell !== null && build !== undefined
  const pending = useRef<PutAnswer>(null)
  const hold = useCallback((put: PutAnswer | null) => {
    pending.current = put
  }, [])
  /** Asked to close with something half typed: then it says what is missing, and offers to leave it out. */
  const [asked, setAsked] = useState(false)
  useFocusBack(cell)
  const leave = (): void => {
    setAsked(false)
    close()
  }
  const finish = (): void => {
    const put = pending.current
    if (put === null) return leave()
    setAsked(true)
    put(leave)
  }
  return (
    <Dialog
      open={shown}
      title={shown ? `What fills “${SLOT_NAMES[cell.slot]}” in ${build.letter}?` : ''}
      onClose={leave}
      actions={
        <>
          {asked && <Button onClick={leave}>Close without it</Button>}
          <Button onClick={finish}>Done</Button>
        </>
      }
    >
      {shown && (
        <HoldAnswer value={hold}>
          <Cell key={`${cell.buildId}-${cell.slot}`} build={build} slot={cell.slot} want={cell.want} mix={cell.mix} />
        </HoldAnswer>
      )}
    </Dialog>
  )
}

/** After the last slot the focus is on that slot, whatever the edits did to the cell it came from. */
function useFocusBack(cell: { buildId: string; slot: Slot } | null): void {
  const last = useRef(cell)
  useEffect(() => {
    if (cell === null && last.current) focusSlot(last.current.buildId, last.current.slot)
    last.current = cell
  }, [cell])
}

const ANSWERS = [
  { value: 'buy', label: 'Buy' },
  { value: 'owned', label: 'Already owned' },
  { value: 'not_needed', label: 'Not needed' },
] as const
/** Work has a price of our own where the catalog has none; it is neither owned nor needless. */
const SERVICE_ANSWERS = [
  { value: 'ours', label: 'At our price' },
  { value: 'buy', label: 'From the catalog' },
] as const
type Answer = (typeof ANSWERS | typeof SERVICE_ANSWERS)[number]['value']

interface CellProps {
  build: WorkedBuild
  slot: Slot
  want: Want | null
  mix: PackProposal | undefined
}

function Cell({ build, slot, want, mix }: CellProps): ReactElement {
  const { reader, state } = useDesk()
  const [answer, setAnswer] = useState<Answer>(slot === 'services' ? 'ours' : 'buy')
  const own = state.draft.builds.find((one) => one.id === build.id)?.lines
  const lines = useMemo(() => linesInSlot(build, slot, own ?? []), [build, slot, own])
  const rows = build.rows.filter((row) => row.slot === slot)
  const needs = rows.find((row) => row.needs)?.needs
  const fromKit = rows.filter((row) => row.answer === 'in_kit')
  return (
    <div className="cell-editor">
      {needs && <p className="needs">It {needs}.</p>}
      {want && sayWant(want, reader) !== '' && <p className="needs">Looked for: {sayWant(want, reader)}.</p>}
      {fromKit.map((row) => (
        <p key={row.productId} className="quiet">
          In the kit: {row.text.replace(/, in the kit, not used$/, '')}.{' '}
          {row.text.endsWith('not used') ? 'Something here takes its place.' : 'It fills this slot.'}
        </p>
      ))}
      {lines.length > 0 && (
        <ul className="lines">
          {lines.map((line) => (
            <li key={line.id}>
              <LineForm buildId={build.id} line={line} inKit={fromKit.length > 0} />
            </li>
          ))}
        </ul>
      )}
      {mix && <ProposedPacks build={build} mix={mix} />}
      <ChoiceField
        label={lines.length === 0 ? 'Answer' : 'Something else'}
        value={answer}
        onChange={setAnswer}
        options={slot === 'services' ? SERVICE_ANSWERS : ANSWERS}
      />
      {answer === 'ours' && <OurServices buildId={build.id} />}
      {answer === 'buy' && <ProductSearch build={build} slot={slot} lines={lines} want={want} />}
      {answer === 'owned' && <OwnedForm build={build} slot={slot} lines={lines} />}
      {answer === 'not_needed' && <NotNeededForm build={build} slot={slot} lines={lines} />}
    </div>
  )
}

/** The lines that speak for a slot themselves; a kit's parts are the kit's line, which stands under "Hold water". */
function linesInSlot(build: WorkedBuild, slot: Slot, lines: BuildLine[]): BuildLine[] {
  const ids = new Set(build.rows.filter((row) => row.slot === slot && row.answer !== 'in_kit').map((row) => row.lineId))
  return lines.filter((line) => ids.has(line.id))
}
