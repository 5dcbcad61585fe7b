import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getHearing } from '../client/hearing.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { HEARING } from './hearing-key.ts'
import { MailForm } from './mail-form.tsx'
import { ToldDevices } from './told-devices.tsx'

/** How one hears of what one watches: in the application always, and by what this place offers besides. */
export function HearingSection(): ReactElement {
  const hearing = useQuery({ queryKey: HEARING, queryFn: getHearing, staleTime: 0 })
  const { mail = null, push = null } = hearing.data ?? {}
  const only = hearing.data && mail === null && push === null
  return (
    <section className="form" aria-labelledby="hearing-head">
      <div className="sechead">
        <h2 id="hearing-head">How you hear of deals</h2>
        <p className="quiet">
          What is new on what you watch always stands under <Link to="/watches">Watches</Link>, and comes as a{' '}
          <Link to="/watches" hash="feed-head">
            feed
          </Link>{' '}
          for a reader program.
          {only ? ' This place offers neither e-mail nor messages to phones; a manager can set them up.' : ''}
        </p>
      </div>
      <ErrorNotice error={hearing.error} onRetry={() => void hearing.refetch()} retryWords="Read again" />
      {hearing.isPending && <LoadingRows rows={2} what="how you hear of deals" />}
      {mail && <MailForm mail={mail} />}
      {push && <ToldDevices push={push} />}
    </section>
  )
}
