import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { problemOf } from '../client/problem.ts'
import { getLink, type LinkPurpose } from '../client/session.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { JoinForm } from './join-form.tsx'
import { NewPasswordForm } from './new-password-form.tsx'

const TITLES: Record<LinkPurpose['purpose'], string> = {
  first_manager: 'Set up this install',
  invite: 'Join',
  new_password: 'Set a new password',
}

/** Opened from a one-use link: makes the first manager, or the person who was invited, or sets a new password. */
export function JoinScreen(): ReactElement {
  const { token } = useParams({ from: '/join/$token' })
  const link = useQuery({ queryKey: ['link', token], queryFn: () => getLink(token), staleTime: Infinity, retry: false })
  const title = link.data ? TITLES[link.data.purpose] : 'Join'
  const spent = link.error && [404, 409, 410].includes(problemOf(link.error).status)
  return (
    <Screen title={title} width="narrow">
      {link.isPending && <LoadingRows rows={3} what="the link" />}
      {spent ? (
        <Told kind="warn" title="This link is used up or over">
          <p>A link works once and for a limited time. Ask the manager for a new one; if you have an account already, sign in.</p>
          <p>
            <Link to="/sign-in" search={{}}>
              Sign in
            </Link>
          </p>
        </Told>
      ) : (
        <ErrorNotice error={link.error} onRetry={() => void link.refetch()} />
      )}
      {link.data?.purpose === 'new_password' && <NewPasswordForm token={token} link={link.data} />}
      {link.data && link.data.purpose !== 'new_password' && <JoinForm token={token} link={link.data} />}
    </Screen>
  )
}
