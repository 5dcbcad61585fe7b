/** Least length where a password is the only proof (NIST SP 800-63B-4). The server holds the rule; this is its words. */
const LEAST_PASSWORD = 15

export const PASSWORD_HELP = `At least ${LEAST_PASSWORD} characters; a sentence you will remember is good. Spaces and any letters are welcome.`
