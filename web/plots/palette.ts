/** The light values of web/tokens.css under the tokens' own names: used as they stand on paper, and as fallbacks on screen. */
export const LIGHT = {
  paper: '#f6f8f4',
  sheet: '#ffffff',
  water: '#e1eeea',
  rule: '#cbd5cf',
  edge: '#72837b',
  ink: '#14211d',
  'ink-2': '#45554e',
  glass: '#0b5d4c',
  pen: '#1b4b96',
  sale: '#85306c',
  marginal: '#7d5200',
  'not-fit': '#a1241d',
  'store-3': '#70482b',
} as const
export type Colour = keyof typeof LIGHT

/** Gives a colour by its token's name. */
export type Paint = (colour: Colour) => string

/** The ground of printed paper is the paper itself. */
const onPaper: Paint = (colour) => (colour === 'paper' ? '#ffffff' : LIGHT[colour])
const onScreen: Paint = (colour) => `var(--${colour}, ${LIGHT[colour]})`

/**
 * Colours for a drawing: custom properties that follow light and dark on a screen, literal values on paper.
 *
 * @example paintFor(true)('glass') // '#0b5d4c'
 * @example paintFor(false)('glass') // 'var(--glass, #0b5d4c)'
 */
export const paintFor = (paper: boolean | undefined): Paint => (paper === true ? onPaper : onScreen)

/** Fill of a stretch that is marked on a plot: on paper its edges alone tell it, since water is printed only inside tanks. */
export const markedFill = (paper: boolean | undefined): string => (paper === true ? 'none' : onScreen('water'))

/** The colour of the words around it on a screen; ink on paper, where nothing is inherited. */
export const currentInk = (paper: boolean | undefined, colour: Colour = 'ink'): string =>
  paper === true ? onPaper(colour) : 'currentColor'
