import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Faces } from './page-one-layout.ts'
import { widthsOf } from './text-width.ts'

/** Static fonts of the two families, width 100 only. A face that the template asks for and that is not here falls to the nearest of these. */
const FILES = {
  regular: '@expo-google-fonts/archivo/400Regular/Archivo_400Regular.ttf',
  strong: '@expo-google-fonts/archivo/600SemiBold/Archivo_600SemiBold.ttf',
  bold: '@expo-google-fonts/archivo/700Bold/Archivo_700Bold.ttf',
  title: '@expo-google-fonts/besley/600SemiBold/Besley_600SemiBold.ttf',
} as const

function read(face: keyof typeof FILES): Buffer {
  return readFileSync(createRequire(import.meta.url).resolve(FILES[face]))
}

/** The bytes of every font that a document may embed. */
export function paperFonts(): Buffer[] {
  return [read('regular'), read('strong'), read('bold'), read('title')]
}

/** How wide texts come out in the faces that lines are reckoned in. */
export function paperFaces(): Faces {
  return { regular: widthsOf(read('regular')), strong: widthsOf(read('strong')), title: widthsOf(read('title')) }
}
