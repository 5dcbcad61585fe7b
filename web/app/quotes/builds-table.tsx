import type { CSSProperties, ReactElement } from 'react'
import { SLOT_NAMES } from '../../../core/catalog/kinds.ts'
import { currencySign } from '../../../core/money.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { BuildHeads } from './build-head.tsx'
import { useDesk } from './desk-context.ts'
import { SlotCellView } from './slot-cell.tsx'
import { shownSlots, slotCells } from './slot-grid.ts'
import { SumRows } from './sum-rows.tsx'
import { TierRows } from './tier-rows.tsx'

/** Builds A to D side by side: drawing, tiers, verdicts, slots, totals. On a phone one at a time. */
export function BuildsTable(): ReactElement {
  const { builds, shown, chosen, choose, currency } = useDesk()
  const slots = shownSlots(shown)
  const cells = shown.map((build) => slotCells(build, slots))
  return (
    <section className="builds" aria-label="Builds side by side" style={{ '--builds': builds.length } as CSSProperties}>
      {builds.length > 1 && (
        <div className="phone-choice">
          <ChoiceField
            label="Build"
            value={chosen.id}
            onChange={choose}
            options={builds.map((build) => ({ value: build.id, label: build.letter }))}
          />
        </div>
      )}
      <table>
        <caption className="sr">Builds side by side: prices, sizing, slots and totals</caption>
        <colgroup>
          <col className="c0" />
          {shown.map((build) => (
            <col key={build.id} />
          ))}
        </colgroup>
        <BuildHeads />
        <TierRows />
        <tbody className="slots">
          <tr className="sub">
            <th scope="row" colSpan={shown.length + 1}>
              <div>
                Slots, at today’s price in {currencyWords(currency)}
                <span className="quiet">A price opens its sightings</span>
              </div>
            </th>
          </tr>
          {slots.map((slot, row) => (
            <tr key={slot}>
              <th scope="row">{SLOT_NAMES[slot]}</th>
              {shown.map((build, column) => {
                const cell = cells[column]?.[row]
                return cell && <SlotCellView key={build.id} build={build} slot={slot} cell={cell} />
              })}
            </tr>
          ))}
        </tbody>
        <SumRows />
      </table>
    </section>
  )
}

const currencyWords = (currency: string): string => (currencySign(currency) === '$' ? 'dollars' : currency)
