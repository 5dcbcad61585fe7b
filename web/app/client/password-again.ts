/** Asks whoever is signed in for the password; true once the server has taken it. */
type AskPassword = () => Promise<boolean>

let ask: AskPassword | null = null
let asking: Promise<boolean> | null = null

/** Lets a screen ask, until it calls what it is given back. */
export function answerPasswordAgain(by: AskPassword): () => void {
  ask = by
  return () => {
    if (ask === by) ask = null
  }
}

/** True where the password was given and the refused call is worth repeating. Two calls at one moment share the question. */
export function passwordAgain(): Promise<boolean> {
  asking ??= (ask?.() ?? Promise.resolve(false)).finally(() => (asking = null))
  return asking
}
