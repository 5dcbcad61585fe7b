import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { Button } from '../parts/button.tsx'
import { MergedTold, StaleTold } from '../parts/conflict-told.tsx'
import { Screen } from '../parts/screen.tsx'
import { Told } from '../parts/told.tsx'
import { useReader } from '../session/session.ts'
import { ArchiveDialog } from './archive-dialog.tsx'
import { PictureSection } from './picture-section.tsx'
import { readDraft } from './product-draft.ts'
import { ProductForm } from './product-form.tsx'
import { useProductEdit, type ProductRead } from './use-product-edit.ts'

/** Edits one product; archiving saves what is stored, not what is typed. */
export function EditProduct({ read, reload }: { read: ProductRead; reload: () => Promise<ProductRead | undefined> }): ReactElement {
  const reader = useReader()
  const { stored, draft, setDraft, clashes, save, compare, stale } = useProductEdit(read, reload)
  const [asking, setAsking] = useState(false)
  const { id, name, kind, archived } = stored.product
  const setArchived = (next: boolean): void => {
    setAsking(false)
    save.mutate({ ...readDraft(stored.draft, reader, stored).body, archived: next })
  }
  return (
    <Screen
      title={name}
      pageTitle={`${name} · edit`}
      above={
        <>
          <Link to="/catalog">Catalog</Link> · {KIND_NAMES[kind]}
        </>
      }
      actions={
        <>
          <Link to="/prices/$productId" params={{ productId: id }} className="btn">
            See its prices
          </Link>
          <Button onClick={() => (archived ? setArchived(false) : setAsking(true))}>
            {archived ? 'Take out of the archive' : 'Archive'}
          </Button>
        </>
      }
    >
      {archived && (
        <Told kind="note" title="Archived">
          <p>It stays in old quotes and takes no new sightings.</p>
        </Told>
      )}
      <ProductForm
        draft={draft}
        onChange={setDraft}
        stored={stored}
        error={save.error}
        busy={save.isPending}
        saveWords={`Save ${draft.name.trim() || 'the product'}`}
        conflict={
          stale ? <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} /> : clashes && <MergedTold clashes={clashes} />
        }
        onSave={(body) => save.mutate(body)}
      />
      <PictureSection productId={id} name={name} />
      <ArchiveDialog open={asking} name={name} onClose={() => setAsking(false)} onArchive={() => setArchived(true)} />
    </Screen>
  )
}
