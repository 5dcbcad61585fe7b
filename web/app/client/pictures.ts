import type { PictureSize, ProductPicture } from '../../../core/catalog/picture.ts'
import { requestVersioned, type Versioned } from './request.ts'

export const getPicture = (productId: string): Promise<Versioned<ProductPicture>> =>
  requestVersioned('GET', `/api/products/${productId}/picture`)
export const putPicture = (productId: string, file: Blob, etag: string): Promise<Versioned<ProductPicture>> =>
  requestVersioned('PUT', `/api/products/${productId}/picture`, { file, etag })
export const removePicture = (productId: string, etag: string): Promise<Versioned<ProductPicture>> =>
  requestVersioned('DELETE', `/api/products/${productId}/picture`, { etag })
export const pictureAddress = (hash: string, size: PictureSize): string => `/api/pictures/${hash}/${size}`
