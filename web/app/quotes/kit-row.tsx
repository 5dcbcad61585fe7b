import { useDeferredValue, useMemo, type ReactElement } from 'react'
import { kitsApart, sayKitApart } from '../../../core/quote/kit-apart.ts'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'

/** Each kit against the parts that it replaces in its build. Told a moment after an edit. */
export function KitRow(): ReactElement | null {
  const { shown, chosen, currency, inputs } = useDesk()
  // A keystroke is shown first, this after it.
  const settled = useDeferredValue(inputs)
  const told = useMemo(
    () => settled.draft.builds.map(({ id }, index) => ({ id, words: kitsApart(settled, index).map((kit) => sayKitApart(kit, currency)) })),
    [settled, currency],
  )
  if (told.every(({ words }) => words.length === 0)) return null
  return (
    <tr className="compared">
      <th scope="row">Kit</th>
      {shown.map(({ id }) => (
        <td key={id} className={columnClass(id === chosen.id)}>
          <span className="note">{told.find((one) => one.id === id)?.words.join(' ')}</span>
        </td>
      ))}
    </tr>
  )
}
