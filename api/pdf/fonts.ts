import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

/** Static fonts of the two families, width 100 only. A face that the template asks for and that is not here falls to the nearest of these. */
const FILES = [
  '@expo-google-fonts/archivo/400Regular/Archivo_400Regular.ttf',
  '@expo-google-fonts/archivo/600SemiBold/Archivo_600SemiBold.ttf',
  '@expo-google-fonts/archivo/700Bold/Archivo_700Bold.ttf',
  '@expo-google-fonts/besley/600SemiBold/Besley_600SemiBold.ttf',
] as const

/** The bytes of every font that a document may embed. */
export function paperFonts(): Buffer[] {
  const { resolve } = createRequire(import.meta.url)
  return FILES.map((file) => readFileSync(resolve(file)))
}
