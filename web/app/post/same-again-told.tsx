import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'

/** Said before the button is pressed a second time; posting again stays possible. */
export const SameAgain = ({ again, today }: { again: 'posted' | 'kept'; today: boolean }): ReactElement => (
  <Told
    kind="note"
    title={again === 'kept' ? 'This one is kept on this phone already' : today ? 'You posted this today' : 'You posted this for that day'}
  >
    <p>Same product, store and price. Once is enough; post it again only if you mean to.</p>
  </Told>
)
