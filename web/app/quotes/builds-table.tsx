import type { CSSProperties, KeyboardEvent, ReactElement } from 'react'
import { SLOT_NAMES } from '../../../core/catalog/kinds.ts'
import { currencySign } from '../../../core/money.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { Button } from '../parts/button.tsx'
import { BuildHeads } from './build-head.tsx'
import { useDesk } from './desk-context.ts'
import { moveBetweenSlots } from './desk-focus.ts'
import { slotAfter, unanswered } from './next-slot.ts'
import { SlotCellView } from './slot-cell.tsx'
import { shownSlots, slotCells } from './slot-grid.ts'
import { SumRows } from './sum-rows.tsx'
import { TierRows } from './tier-rows.tsx'
import { useByDates } from './use-by-dates.ts'

/** Builds A to D side by side: drawing, tiers, verdicts, slots, totals. On a phone one at a time. */
export function BuildsTable(): ReactElement {
  const { builds, shown, chosen, choose, currency, inputs } = useDesk()
  const expected = useByDates(builds)
  const slots = shownSlots(shown)
  const cells = shown.map((build) => slotCells(build, slots))
  const move = (event: KeyboardEvent): void => {
    const from = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('.cell-name') : null
    const ids = shown.map((build) => build.id)
    if (from && moveBetweenSlots(from, event.key, ids)) event.preventDefault()
  }
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
        <TierRows expected={expected} />
        {/* The presses are the cells' own buttons; arrows only move between them. */}
        {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions */}
        <tbody className="slots" onKeyDown={move}>
          <tr className="sub">
            <th scope="row" colSpan={shown.length + 1}>
              <div>
                <span>
                  Slots, at today’s price in {currencyWords(currency)}{' '}
                  <span className="quiet">
                    {inputs.install.mode === 'store' ? 'A price opens its place in our list' : 'A price opens its sightings'}
                  </span>
                </span>
                <NextOpen />
              </div>
            </th>
          </tr>
          {slots.map((slot, row) => (
            <tr key={slot}>
              <th scope="row">{SLOT_NAMES[slot]}</th>
              {shown.map((build, column) => {
                const cell = cells[column]?.[row]
                return cell && <SlotCellView key={build.id} build={build} slot={slot} cell={cell} advice={expected.get(build.id)?.advice} />
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

/** Opens the next slot that is still open, of the chosen build or else of the first that has one. */
function NextOpen(): ReactElement | null {
  const { builds, chosen, choose, open, locked } = useDesk()
  const build = [chosen, ...builds].find((one) => unanswered(one).length > 0)
  const slot = build && slotAfter(unanswered(build), null)
  if (locked || !build || !slot) return null
  const go = (): void => {
    choose(build.id)
    open({ at: 'cell', buildId: build.id, slot, want: null })
  }
  return (
    <Button small look="plain" aria-keyshortcuts="N" onClick={go}>
      Next open slot<span className="sr"> of build {build.letter}</span>
    </Button>
  )
}
