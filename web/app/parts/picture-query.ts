import { queryOptions } from '@tanstack/react-query'
import { getPicture } from '../client/pictures.ts'

/** What is known of a product's picture, with the version it has. */
export const pictureQuery = (productId: string) => queryOptions({ queryKey: ['picture', productId], queryFn: () => getPicture(productId) })
