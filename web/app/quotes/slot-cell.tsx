import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { SLOT_NAMES, type Slot } from '../../../core/catalog/kinds.ts'
import { yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { LineCost } from '../../../core/pricing/tiers.ts'
import type { AssembledBuild, SlotRow } from '../../../core/quote/revision.ts'
import { SaleSign } from '../parts/prices.tsx'
import { Verdict } from '../parts/verdict.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import { findingOfSlot } from './slot-findings.ts'
import type { SlotCell } from './slot-grid.ts'

/** One slot of one build. The whole cell opens it; the price opens its sightings. */
export function SlotCellView({ build, slot, cell }: { build: AssembledBuild; slot: Slot; cell: SlotCell }): ReactElement {
  const { chosen, open } = useDesk()
  const finding = findingOfSlot(build.report, slot)
  const missing = cell.rows.every((row) => row.answer === 'missing')
  const required = cell.rows.some((row) => row.required)
  const bracket = cell.bracket && ['kit', ...(cell.bracket === 'only' ? ['first', 'last'] : [cell.bracket])].join(' ')
  return (
    <td className={columnClass(build.id === chosen.id, bracket, missing && required && 'open')}>
      {cell.rows.map((row, index) => (
        <div className="cell-row" key={`${row.lineId}-${row.productId}-${index}`}>
          <button
            type="button"
            className="cell-name"
            data-quiet={isQuiet(row) || undefined}
            onClick={() => open({ at: 'cell', buildId: build.id, slot, want: null })}
          >
            <span className="sr">
              {SLOT_NAMES[slot]}, build {build.letter}:{' '}
            </span>
            {nameOf(row)}
          </button>
          <Detail row={row} cost={build.cost.lines.find((line) => line.lineId === row.lineId)} />
          <LineNote lineId={row.answer === 'in_kit' ? null : row.lineId} />
        </div>
      ))}
      {finding && (
        <span className="vd">
          <Verdict verdict={finding.verdict} words={finding.wording} />
        </span>
      )}
    </td>
  )
}

const isQuiet = (row: SlotRow): boolean =>
  row.answer === 'not_needed' || row.answer === 'owned' || (row.answer === 'missing' && !row.required)

function nameOf(row: SlotRow): string {
  if (row.answer === 'not_needed') return 'Not needed'
  if (row.answer === 'missing')
    return row.text === 'not chosen yet' || row.text === 'not chosen' ? (row.required ? 'Choose' : 'None, may stay so') : row.text
  return row.text
}

function Detail({ row, cost }: { row: SlotRow; cost: LineCost | undefined }): ReactElement | null {
  switch (row.answer) {
    case 'in_kit':
      return <span className="src">in the kit</span>
    case 'owned':
      return <span className="src">already owned</span>
    case 'not_needed':
      return <span className="src">{row.text}</span>
    case 'missing':
      return row.needs ? <span className="src needs">{row.needs}</span> : null
    default:
      return <PriceDetail row={row} cost={cost} />
  }
}

function PriceDetail({ row, cost }: { row: SlotRow; cost: LineCost | undefined }): ReactElement {
  const { inputs, currency } = useDesk()
  const bare = (minor: number) => sayMoney(minor, currency, { symbol: false })
  const store = inputs.stores.find((one) => one.id === cost?.storeId)
  const reduced = cost && (cost.condition === 'sale' || cost.condition === 'clearance')
  const price = cost?.todayMinor == null ? 'no price' : bare(cost.todayMinor)
  return (
    <>
      {row.productId && (
        <Link to="/prices/$productId" params={{ productId: row.productId }} className={cost?.todayMinor == null ? 'price none' : 'price'}>
          {price}
          <span className="sr">, sightings of {row.text}</span>
        </Link>
      )}
      <span className="src">
        {store?.name ?? 'no store has a price'}
        {reduced && (
          <>
            {' · '}
            <SaleSign until={cost.holdsUntil} thisYear={yearOf(inputs.asOf)} words={cost.condition === 'sale' ? 'sale' : 'clearance'} />
          </>
        )}
        {cost?.age === 'ageing' && <span className="ageing"> · ageing</span>}
        {cost?.reporters === 1 && <span> · one report</span>}
      </span>
      {reduced && cost.fullMinor !== null && (
        <span className="was">
          <span className="sr">full price </span>
          {bare(cost.fullMinor)}
        </span>
      )}
    </>
  )
}

function LineNote({ lineId }: { lineId: string | null }): ReactElement | null {
  const { state } = useDesk()
  const line = state.draft.builds.flatMap((build) => build.lines).find((one) => one.id === lineId)
  return line?.answer === 'buy' && line.note ? <span className="line-note">{line.note}</span> : null
}
