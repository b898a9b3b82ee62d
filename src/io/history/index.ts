export type { StorageUse } from '../database/index.ts';
export type * from './types.ts';
export { createHistory } from './history.ts';
export { completed, newEntry, withEntry } from './entry.ts';
