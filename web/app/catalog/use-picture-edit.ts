import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ProductPicture } from '../../../core/catalog/picture.ts'
import { putPicture, removePicture } from '../client/pictures.ts'
import type { Versioned } from '../client/request.ts'
import { pictureQuery } from '../parts/picture-query.ts'

/** Sends and takes away a product's picture, each on the version that is shown. */
export function usePictureEdit(productId: string, etag = '') {
  const queries = useQueryClient()
  const onSuccess = async (stored: Versioned<ProductPicture>): Promise<void> => {
    queries.setQueryData(pictureQuery(productId).queryKey, stored)
    await queries.invalidateQueries({ queryKey: ['products'] })
  }
  const send = useMutation({ mutationFn: (file: Blob) => putPicture(productId, file, etag), onSuccess })
  const remove = useMutation({ mutationFn: () => removePicture(productId, etag), onSuccess })
  return { send, remove }
}
