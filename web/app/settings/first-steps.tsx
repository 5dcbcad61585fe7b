import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { InstallSettings } from '../../../core/install.ts'

/** Nobody has said yet whom to ask here: the place is as it was made. */
const isFresh = ({ contact }: InstallSettings): boolean => contact === ''

/** What a new place needs before its first quote, in the order that one builds on another; folded away once it says whom to ask. */
export function FirstSteps({ install }: { install: InstallSettings }): ReactElement {
  const isStore = install.mode === 'store'
  return (
    <details className="one-by-one first-steps" open={isFresh(install)}>
      <summary>First steps</summary>
      <ol>
        <li>
          <b>This place</b>: its name, whom to ask, country and currency, below. The currency stays once a price is stored.
        </li>
        <li>
          <Link to="/stores">Stores and their regions</Link>:{' '}
          {isStore ? 'your own, with tax and delivery.' : 'where members buy, with tax and delivery.'}
        </li>
        <li>
          <Link to="/catalog/exchange">Catalog</Link>: products from a file{isStore ? ', then the ' : ' or one by one.'}
          {isStore && (
            <>
              <Link to="/catalog/price-list">price list</Link>.
            </>
          )}
        </li>
        <li>
          <Link to="/people">People</Link>: a link for each who is to quote or to report prices.
        </li>
        <li>
          <Link to="/settings/backups">Backups</Link>: make one, and keep it on another machine.
        </li>
      </ol>
    </details>
  )
}
