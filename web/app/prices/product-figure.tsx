import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { pictureAddress } from '../client/pictures.ts'
import { pictureQuery } from '../parts/picture-query.ts'

/** The product's picture on its own page; nothing where it has none. */
export function ProductFigure({ productId, name }: { productId: string; name: string }): ReactElement | null {
  const picture = useQuery(pictureQuery(productId)).data?.value
  if (!picture || picture.hash === null) return null
  return (
    <div className="product-figure">
      <img src={pictureAddress(picture.hash, 'large')} alt={name} width={picture.width ?? undefined} height={picture.height ?? undefined} />
    </div>
  )
}
