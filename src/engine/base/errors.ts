/** A caller's mistake: names the argument, its bound and the way out. Poor audio is never an error but a finding. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
