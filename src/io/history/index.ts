export type { StorageUse } from '../database/index.ts';
export type * from './types.ts';
export { createHistory } from './history.ts';
export { completed, nameFor, newEntry, withEntry } from './entry.ts';
