/** How long a wrong password counts. */
export const COUNTED_MINUTES = 15
/** A person who mistypes needs two or three; fifteen minutes for five more is 480 guesses a day, hopeless against fifteen characters. */
export const MOST_WRONG_PASSWORDS = 5
/** A manager who sorts out several accounts is asked once; whoever finds the screen open after a cup of tea is asked. */
export const PROOF_MINUTES = 10
