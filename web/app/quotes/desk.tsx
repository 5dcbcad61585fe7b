import type { ReactElement } from 'react'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { OwnStoreMissing } from '../price-list/own-store-told.tsx'
import { Screen } from '../parts/screen.tsx'
import { BuildDialogs } from './build-dialogs.tsx'
import { BuildsTable } from './builds-table.tsx'
import { CellEditor } from './cell-editor.tsx'
import { ClosedPanel } from './closed-panel.tsx'
import { ConflictPanel } from './conflict-panel.tsx'
import { DeskActs } from './desk-acts.tsx'
import { DeskProvider } from './desk-context.ts'
import { DeskSide } from './desk-side.tsx'
import { DiscardFromDesk } from './discard-from-desk.tsx'
import { IssueDialog } from './issue-dialog.tsx'
import { IssuedPanel } from './issued-panel.tsx'
import { sayQuote, saySaving } from './saving-words.ts'
import { ShortcutPanel } from './shortcut-panel.tsx'
import { SizingPanel } from './sizing-panel.tsx'
import { SuggestionPanel } from './suggestion-panel.tsx'
import { useMedia, WIDE } from './use-media.ts'
import { useDeskState } from './use-desk-state.ts'
import { WithdrawDialog } from './withdraw-dialog.tsx'

/** The desk: the need, the builds side by side, the report of the chosen one. Everything in one view from 1440 px on. */
export function DeskView({ opened }: { opened: QuoteView }): ReactElement {
  const { desk, flush, reload } = useDeskState(opened)
  const { view, draft, saving } = desk.state
  const wide = useMedia(WIDE)
  const above = (
    <>
      {sayQuote(view)} · <output>{saySaving(saving, view.savedAt, view.install.timeZone)}</output>
    </>
  )
  return (
    <DeskProvider value={desk}>
      <Screen title={draft.title || `A quote for ${view.customer.name}`} width="wide" above={above} actions={<DeskActs flush={flush} />}>
        <OwnStoreMissing />
        <ClosedPanel />
        <ConflictPanel flush={flush} />
        <IssuedPanel flush={flush} />
        <div className="desk" data-four={desk.builds.length >= 4 || undefined}>
          <DeskSide />
          <div className="desk-middle">
            <BuildsTable />
            <SuggestionPanel />
            {!wide && <ShortcutPanel />}
          </div>
          <SizingPanel />
        </div>
        <CellEditor />
        <BuildDialogs />
        <IssueDialog flush={flush} reload={reload} />
        <WithdrawDialog reload={reload} />
        <DiscardFromDesk flush={flush} />
      </Screen>
    </DeskProvider>
  )
}
