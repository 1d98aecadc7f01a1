/** Reads the environment where nobody checks it. */
export function databaseUrl(): string | undefined {
  return process.env['DATABASE_URL'];
}
