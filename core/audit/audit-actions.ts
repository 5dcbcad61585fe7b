/**
 * What the trail can tell, each as the sentence a manager reads: `{who}` is the person who did it, `{what}` the thing it was done to.
 * A row never changes its meaning, since old entries are read by it.
 */
export const AUDIT_SENTENCES = {
  // people
  person_joined: '{who} made an account with an invitation',
  person_changed: '{who} changed {what}',
  invitation_made: '{who} made an invitation',
  invitation_withdrawn: '{who} took an invitation back',
  password_changed: '{who} chose a new password',
  password_link_made: '{who} made a link that sets a new password for {what}',
  password_link_used: '{who} set a new password with a link',
  sessions_ended: '{who} signed devices out',
  // install
  install_changed: '{who} changed the settings',
  sale_time_added: '{who} added a sale time',
  sale_time_changed: '{who} changed a sale time',
  sale_time_deleted: '{who} took a sale time out',
  region_added: '{who} added {what}',
  region_changed: '{who} changed {what}',
  region_deleted: '{who} took {what} out',
  currency_rate_entered: '{who} entered {what}',
  other_club_added: '{who} had prices of {what} read',
  other_club_removed: '{who} took {what} out, with all that it told',
  prices_published: '{who} had the members’ prices told to other clubs',
  prices_unpublished: '{who} had the members’ prices told to nobody any more',
  // catalog and stores
  product_added: '{who} added {what}',
  product_changed: '{who} changed {what}',
  products_imported: '{who} imported products',
  store_added: '{who} added {what}',
  store_changed: '{who} changed {what}',
  store_deleted: '{who} deleted {what}',
  livestock_group_added: '{who} added {what}',
  livestock_group_changed: '{who} changed {what}',
  prices_imported: '{who} imported a price list',
  // sightings
  sightings_imported: '{who} imported sightings',
  sighting_withdrawn: '{who} withdrew a sighting of {what}',
  sighting_ruled: '{who} judged a sighting of {what}',
  sightings_undone: '{who} took back all sightings of {what}',
  sightings_restored: '{who} put back the sightings of {what}',
  // customers and quotes
  customer_added: '{who} added {what}',
  customer_changed: '{who} changed {what}',
  customer_erased: '{who} erased {what}',
  customers_imported: '{who} imported customers',
  customers_exported: '{who} exported the customers',
  quote_issued: '{who} issued {what}',
  quote_withdrawn: '{who} withdrew {what}',
  quote_discarded: '{who} discarded a quote that was never issued',
  quote_link_renewed: '{who} ended the link of {what} and made a new one',
  setup_link_renewed: '{who} ended the setup link of {what} and made a new one',
  // keeping it
  backup_made: '{who} made a backup',
  backup_downloaded: '{who} downloaded a backup',
} as const satisfies Record<string, string>

export type AuditAction = keyof typeof AUDIT_SENTENCES

/** What an entry can be about. */
export const AUDIT_SUBJECTS = [
  'person',
  'invitation',
  'install',
  'product',
  'store',
  'region',
  'currency_rate',
  'other_club',
  'livestock_group',
  'sighting',
  'customer',
  'quote',
  'backup',
] as const
export type AuditSubjectKind = (typeof AUDIT_SUBJECTS)[number]
