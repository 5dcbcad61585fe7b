import type { Role } from '../../core/people/roles.ts'

/** Least role an operation asks for; `public` asks for no session. */
export type Rule = Role | 'public'

/**
 * Who may do what: every route of the server by its operation id. A route that is not here fails at the start.
 * Whose row it is (a member withdraws only her own sighting) is decided in the query.
 */
export const RULES = {
  // session and links
  getSession: 'public',
  signIn: 'public',
  signOut: 'public',
  showLink: 'public',
  useLink: 'public',
  setPasswordByLink: 'public',
  listSessions: 'member',
  endSession: 'member',
  endOtherSessions: 'member',
  // people
  listPeople: 'manager',
  invitePerson: 'manager',
  listInvitations: 'manager',
  withdrawInvitation: 'manager',
  updatePerson: 'manager',
  changePassword: 'member',
  setOwnUnits: 'member',
  makePasswordLink: 'manager',
  listAudit: 'manager',
  // install
  getInstall: 'member',
  updateInstall: 'manager',
  // backups
  listBackups: 'manager',
  makeBackup: 'manager',
  downloadBackup: 'manager',
  // catalog
  listProducts: 'member',
  getProduct: 'member',
  getPriceRecord: 'member',
  getPicture: 'member',
  showPicture: 'member',
  putPicture: 'advisor',
  removePicture: 'advisor',
  createProduct: 'advisor',
  updateProduct: 'advisor',
  importProducts: 'manager',
  importTemplate: 'manager',
  listStores: 'member',
  getStore: 'member',
  createStore: 'advisor',
  updateStore: 'advisor',
  // sightings
  postSighting: 'member',
  getSighting: 'member',
  confirmSighting: 'member',
  disputeSighting: 'member',
  withdrawSighting: 'member',
  takeBackVote: 'member',
  listWaiting: 'manager',
  judgeSighting: 'manager',
  listUndos: 'manager',
  undoSightings: 'manager',
  reverseUndo: 'manager',
  getBoard: 'member',
  getPriceViews: 'member',
  // quotes
  listCustomers: 'advisor',
  createCustomer: 'advisor',
  getCustomer: 'advisor',
  updateCustomer: 'advisor',
  listQuotes: 'advisor',
  createQuote: 'advisor',
  getQuote: 'advisor',
  saveQuote: 'advisor',
  issueQuote: 'advisor',
  withdrawQuote: 'advisor',
  renewQuoteLink: 'advisor',
  getRevision: 'advisor',
  getRevisionPdf: 'advisor',
  getDraftPdf: 'advisor',
  listSetups: 'advisor',
  renewSetupLink: 'advisor',
  // sizing
  computeSizing: 'member',
  // what a customer or a beginner opens
  getQuoteByLink: 'public',
  answerQuoteByLink: 'public',
  getSetupByLink: 'public',
  tickSetupByLink: 'public',
  addReadingByLink: 'public',
  removeReadingByLink: 'public',
  showQuotePage: 'public',
  answerOnQuotePage: 'public',
  getQuotePdfByLink: 'public',
  showSetupPage: 'public',
  tickOnSetupPage: 'public',
  addReadingOnSetupPage: 'public',
  removeReadingOnSetupPage: 'public',
  startOnSetupPage: 'public',
  // the service itself
  getOpenApi: 'public',
  showReference: 'public',
  checkLive: 'public',
  checkReady: 'public',
} as const satisfies Record<string, Rule>

export type OperationId = keyof typeof RULES
