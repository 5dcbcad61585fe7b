import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { SLOT_NAMES, type Slot } from '../../../core/catalog/kinds.ts'
import { yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { LineAdvice } from '../../../core/pricing/line-advice.ts'
import type { LineCost } from '../../../core/pricing/tiers.ts'
import type { WorkedBuild, SlotRow } from '../../../core/quote/revision.ts'
import { signOf } from '../../../core/sizing/count-words.ts'
import { SaleSign } from '../parts/prices.tsx'
import { Verdict } from '../parts/verdict.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import { LineAdviceFold } from './line-advice-fold.tsx'
import { findingOfSlot } from './slot-findings.ts'
import type { SlotCell } from './slot-grid.ts'

interface Props {
  build: WorkedBuild
  slot: Slot
  cell: SlotCell
  /** What to do about the build's lines by the day of the need, where it is known. */
  advice?: readonly LineAdvice[] | undefined
}

/** One slot of one build. The whole cell opens it; the price opens its sightings. */
export function SlotCellView({ build, slot, cell, advice }: Props): ReactElement {
  const { chosen } = useDesk()
  const finding = findingOfSlot(build.report, slot)
  const missing = cell.rows.every((row) => row.answer === 'missing')
  const required = cell.rows.some((row) => row.required)
  const bracket = cell.bracket && ['kit', ...(cell.bracket === 'only' ? ['first', 'last'] : [cell.bracket])].join(' ')
  return (
    <td className={columnClass(build.id === chosen.id, bracket, missing && required && 'open')}>
      {cell.rows.map((row, index) => (
        <CellRow key={index} build={build} slot={slot} row={row} advice={advice?.find(({ lineId }) => lineId === row.lineId)} />
      ))}
      {finding && (
        <span className="vd">
          <Verdict verdict={signOf(finding)} words={finding.wording} />
        </span>
      )}
    </td>
  )
}

interface RowProps {
  build: WorkedBuild
  slot: Slot
  row: SlotRow
  advice: LineAdvice | undefined
}

/** What fills it, where it comes from, and at its end the price; all but the price opens the slot. */
function CellRow({ build, slot, row, advice }: RowProps): ReactElement {
  const { open, locked } = useDesk()
  const cost = build.cost.lines.find((line) => line.lineId === row.lineId)
  const priced = row.answer === 'buy' || row.answer === 'kit'
  return (
    <div className="cell-row">
      <button
        type="button"
        className="cell-name"
        disabled={locked}
        data-build={build.id}
        data-slot={slot}
        data-quiet={isQuiet(row) || undefined}
        onClick={() => open({ at: 'cell', buildId: build.id, slot, want: null })}
      >
        <span className="sr">
          {SLOT_NAMES[slot]}, build {build.letter}:{' '}
        </span>
        <span className="filler">{nameOf(row)}</span>
        <span className={row.needs ? 'src needs' : 'src'}>{priced ? <Where cost={cost} /> : detailOf(row)}</span>
        {row.amount && <span className={row.amount.short ? 'src needs' : 'src'}>{row.amount.words}</span>}
        {row.notes && <span className="line-note">{row.notes.join(' ')}</span>}
        <LineNote lineId={row.answer === 'in_kit' ? null : row.lineId} />
      </button>
      {priced && <Price row={row} cost={cost} />}
      {row.ourPriceMinor !== undefined && <OurPrice minor={row.ourPriceMinor} />}
      {priced && advice && row.productId && (
        <LineAdviceFold
          advice={advice}
          quantity={row.quantity}
          productId={row.productId}
          storeId={storeOfLine(build, row.lineId)}
          kind={row.kind}
          text={row.text}
        />
      )}
    </div>
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

function detailOf(row: SlotRow): string {
  switch (row.answer) {
    case 'in_kit':
      return 'in the kit'
    case 'our_price':
      return 'our price, tax in it'
    case 'owned':
      return 'already owned'
    case 'not_needed':
      return row.text
    default:
      return row.needs ?? ''
  }
}

const isReduced = (cost: LineCost | undefined): boolean => cost?.condition === 'sale' || cost?.condition === 'clearance'

const reportWords = (cost: LineCost | undefined): string => {
  if (cost?.reporters === 1) return ' · one report'
  return cost?.reporters === 0 && cost.sightingIds.length > 0 ? ' · a list' : ''
}

/** The store, until when a sale lasts, and how sure the price is. */
function Where({ cost }: { cost: LineCost | undefined }): ReactElement {
  const { inputs } = useDesk()
  const store = inputs.stores.find((one) => one.id === cost?.storeId)
  return (
    <>
      {store?.name ?? (inputs.install.mode === 'store' ? 'our list has no price' : 'no store has a price')}
      {cost && isReduced(cost) && (
        <>
          {' · '}
          <SaleSign until={cost.holdsUntil} thisYear={yearOf(inputs.asOf)} words={cost.condition === 'sale' ? 'sale' : 'clearance'} />
        </>
      )}
      {cost?.age === 'ageing' && ' · ageing'}
      {cost?.otherClub === undefined ? reportWords(cost) : ` · seen by ${cost.otherClub}`}
    </>
  )
}

/** The line's price today, which opens its sightings or in a store its place in the own list, and under a reduced one the full price. */
function Price({ row, cost }: { row: SlotRow; cost: LineCost | undefined }): ReactElement {
  const { currency, inputs } = useDesk()
  const bare = (minor: number) => sayMoney(minor, currency, { symbol: false })
  const listed = inputs.install.mode === 'store'
  const today = cost?.todayMinor ?? null
  return (
    <span className="cell-end">
      {row.productId && (
        <Link
          to={listed ? '/catalog/price-list/$productId' : '/prices/$productId'}
          params={{ productId: row.productId }}
          className={today === null ? 'price none' : 'price'}
        >
          {today === null ? 'no price' : bare(today)}
          <span className="sr">
            , {listed ? 'our list’s' : 'sightings of'} {row.text}
          </span>
        </Link>
      )}
      {cost && isReduced(cost) && cost.fullMinor !== null && (
        <span className="was">
          <span className="sr">full price </span>
          {bare(cost.fullMinor)}
        </span>
      )}
    </span>
  )
}

/** A price that the advisor wrote: there is no record to open. */
function OurPrice({ minor }: { minor: number }): ReactElement {
  const { currency } = useDesk()
  return (
    <span className="cell-end">
      <span className="price ours">{sayMoney(minor, currency, { symbol: false })}</span>
    </span>
  )
}

function LineNote({ lineId }: { lineId: string | null }): ReactElement | null {
  const { state } = useDesk()
  const line = state.draft.builds.flatMap((build) => build.lines).find((one) => one.id === lineId)
  return line?.answer === 'buy' && line.note ? <span className="line-note">{line.note}</span> : null
}

const storeOfLine = ({ cost }: WorkedBuild, lineId: string | null): string | null =>
  cost.lines.find((line) => line.lineId === lineId)?.storeId ?? null
