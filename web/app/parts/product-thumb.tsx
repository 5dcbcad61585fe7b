import type { ReactElement } from 'react'
import { pictureAddress } from '../client/pictures.ts'
import './product-thumb.css'

/** A product's picture beside its name in a list; the hatch where it has none, so that names stay in one line. */
export function ProductThumb({ hash, name }: { hash: string | undefined; name: string }): ReactElement {
  if (hash === undefined) return <span className="thumb none" />
  return (
    <span className="thumb">
      <img src={pictureAddress(hash, 'small')} alt={name} width={40} height={40} loading="lazy" decoding="async" />
    </span>
  )
}
