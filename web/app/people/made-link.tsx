import { useState, type ReactElement } from 'react'
import { civilDateAt, sayWeekday, yearOf } from '../../../core/dates.ts'
import type { Invitation } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'

/** A one-use link, shown once: only its hash is kept. `gives` is what whoever opens it first does or gets. */
export function MadeLink({ url, expiresAt, thisComputerOnly, gives }: Invitation & { gives: string }): ReactElement {
  const install = useInstall()
  const thisYear = yearOf(useToday())
  const [copied, setCopied] = useState<boolean | null>(null)
  const until = sayWeekday(civilDateAt(Date.parse(expiresAt), install.timeZone), thisYear)
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(url)
      setCopied(true)
    } catch {
      setCopied(false)
    }
  }
  return (
    <Told kind="warn" title="Copy it now: it is shown once" live>
      <p className="made-link">
        <label className="sr" htmlFor="made-link">
          One-use link
        </label>
        <input id="made-link" readOnly value={url} onFocus={(event) => event.target.select()} />
      </p>
      <p>
        Works once, until {until}. Whoever opens it first {gives}, so send it to that person alone.
      </p>
      {thisComputerOnly && (
        <p>
          <strong>This computer only:</strong> the link names this computer, and on any other it leads nowhere. Set PUBLIC_URL to the https
          address of this place first.
        </p>
      )}
      <p className="acts">
        <Button onClick={() => void copy()}>Copy the link</Button>
        <output>{copied === true ? 'Copied.' : copied === false ? 'Not copied: select it and copy by hand.' : ''}</output>
      </p>
    </Told>
  )
}
