import type { ReactElement } from 'react'
import { sayWeekday, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { CustomerPanel } from './customer-panel.tsx'
import { useDesk } from './desk-context.ts'
import { NeedPanel } from './need-panel.tsx'
import { sayBig } from './need-words.ts'
import { ShortcutPanel } from './shortcut-panel.tsx'
import { useMedia, WIDE } from './use-media.ts'

/** Need, customer and terms: a column where there is room, else folded above the builds with the answers that matter in its line. */
export function DeskSide(): ReactElement {
  const wide = useMedia(WIDE)
  const panels = (
    <div className="desk-side">
      <NeedPanel />
      <CustomerPanel />
      {wide && <ShortcutPanel />}
    </div>
  )
  if (wide) return panels
  return (
    <details className="desk-fold">
      <summary>
        <strong>Need, customer, terms</strong> <FoldLine />
      </summary>
      {panels}
    </details>
  )
}

function FoldLine(): ReactElement {
  const { state, currency, reader } = useDesk()
  const { need } = state.draft
  const parts = [
    sayBig(need, reader),
    need.budgetMinor === null ? '' : sayMoney(need.budgetMinor, currency),
    need.byDate === null ? '' : `by ${sayWeekday(need.byDate, yearOf(state.view.asOf))}`,
  ]
  return <span className="quiet">{parts.filter(Boolean).join(', ')}</span>
}
