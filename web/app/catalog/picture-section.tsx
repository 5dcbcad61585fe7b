import { useQuery } from '@tanstack/react-query'
import { useId, useState, type DragEvent, type ReactElement } from 'react'
import type { ProductPicture } from '../../../core/catalog/picture.ts'
import { pictureAddress } from '../client/pictures.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { pictureQuery } from '../parts/picture-query.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { readPicture } from './read-picture.ts'
import { RemovePictureDialog } from './remove-picture-dialog.tsx'
import { usePictureEdit } from './use-picture-edit.ts'
import './picture-section.css'

/** A product's picture: chosen from the files or the camera, or dropped here; stored at once. */
export function PictureSection({ productId, name }: { productId: string; name: string }): ReactElement {
  const read = useQuery(pictureQuery(productId))
  const { send, remove } = usePictureEdit(productId, read.data?.etag)
  const [fault, setFault] = useState<string | null>(null)
  const [asking, setAsking] = useState(false)
  const take = async (file: File | undefined): Promise<void> => {
    if (!file || send.isPending) return
    remove.reset()
    send.reset()
    const picture = await readPicture(file)
    setFault(picture.fault)
    if (picture.blob) send.mutate(picture.blob)
  }
  const error = send.error ?? remove.error
  const stale = error !== null && problemOf(error).status === 412
  const refetch = (): void => {
    send.reset()
    remove.reset()
    void read.refetch()
  }
  const has = read.data?.value.hash != null
  return (
    <section className="form" aria-labelledby="picture-head">
      <div className="sechead">
        <h2 id="picture-head">Picture</h2>
        <p className="quiet">Stored as soon as it is chosen. Where and with what it was taken is left out.</p>
      </div>
      <ErrorNotice error={read.error} onRetry={() => void read.refetch()} />
      {read.isPending && <LoadingRows rows={3} what="the picture" />}
      {read.data && (
        <div className="picture-edit">
          <PictureFrame picture={read.data.value} name={name} busy={send.isPending} onDrop={(file) => void take(file)} />
          <div className="picture-acts">
            <ChooseFile
              words={has ? 'Choose another picture' : 'Choose a picture'}
              busy={send.isPending}
              fault={fault}
              onFile={(file) => void take(file)}
            />
            {has && <Button onClick={() => setAsking(true)}>Take it away</Button>}
          </div>
        </div>
      )}
      {stale ? <ErrorNotice error={error} onRetry={refetch} retryWords="Show theirs" /> : <ErrorNotice error={error} />}
      <RemovePictureDialog
        open={asking}
        name={name}
        onClose={() => setAsking(false)}
        onRemove={() => {
          setAsking(false)
          remove.mutate()
        }}
      />
    </section>
  )
}

interface FrameProps {
  picture: ProductPicture
  name: string
  busy: boolean
  onDrop: (file: File | undefined) => void
}

/** The picture, or the hatch that says there is none; a file may be dropped on it. */
function PictureFrame({ picture, name, busy, onDrop }: FrameProps): ReactElement {
  const [over, setOver] = useState(false)
  const drop = (event: DragEvent): void => {
    event.preventDefault()
    setOver(false)
    onDrop(event.dataTransfer.files[0])
  }
  return (
    <div
      className="picture-frame"
      data-none={picture.hash === null || undefined}
      data-over={over || undefined}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      {picture.hash !== null && (
        <img
          src={pictureAddress(picture.hash, 'large')}
          alt={name}
          width={picture.width ?? undefined}
          height={picture.height ?? undefined}
        />
      )}
      {(busy || picture.hash === null) && <output>{busy ? 'Sending the picture' : 'No picture yet'}</output>}
    </div>
  )
}

interface ChooseProps {
  words: string
  busy: boolean
  fault: string | null
  onFile: (file: File | undefined) => void
}

/** A file field that looks like the button it is. The browser offers the camera where there is one. */
function ChooseFile({ words, busy, fault, onFile }: ChooseProps): ReactElement {
  const id = useId()
  return (
    <div>
      <label className="btn file-button" aria-disabled={busy || undefined}>
        <input
          type="file"
          accept="image/jpeg,image/png,image/webp"
          className="sr"
          disabled={busy}
          aria-describedby={fault ? `${id}-help ${id}-fault` : `${id}-help`}
          aria-invalid={fault ? true : undefined}
          onChange={(event) => {
            onFile(event.target.files?.[0])
            event.target.value = ''
          }}
        />
        {words}
      </label>
      <p className="help" id={`${id}-help`}>
        JPEG, PNG or WebP, at most 12 MB.<span className="drop-hint"> Or drop a file on the frame.</span>
      </p>
      {fault && (
        <p className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  )
}
