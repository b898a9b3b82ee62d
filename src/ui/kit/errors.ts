/** An error → what can be shown of it. */
export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
