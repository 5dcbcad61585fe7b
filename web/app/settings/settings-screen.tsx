import { Link } from '@tanstack/react-router'
import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { getInstall } from '../client/install.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { FirstSteps } from './first-steps.tsx'
import { SettingsForm } from './settings-form.tsx'

/** What this install is, and how it tells figures. */
export function SettingsScreen(): ReactElement {
  const install = useQuery({ queryKey: ['install'], queryFn: getInstall, refetchOnWindowFocus: false, staleTime: 0 })
  const reload = async () => (await install.refetch({ throwOnError: true })).data
  return (
    <Screen title="Settings" below="They hold for everyone here, and for every quote issued from now on." width="narrow">
      <p>
        <Link to="/settings/backups">Backups</Link> · <Link to="/settings/livestock">Livestock groups</Link> ·{' '}
        <Link to="/settings/other-clubs">Other clubs</Link>
      </p>
      <ErrorNotice error={install.data ? null : install.error} onRetry={() => void install.refetch()} />
      {install.isPending && <LoadingRows what="the settings" />}
      {install.data && <FirstSteps install={install.data.value} />}
      {install.data && <SettingsForm read={install.data} reload={reload} />}
    </Screen>
  )
}
