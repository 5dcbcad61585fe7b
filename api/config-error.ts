/** An environment that cannot be right, in words that name variable and fix. */
export class ConfigError extends Error {}
