export type * from './types.ts';
export { HistoryError } from './errors.ts';
export { createHistory } from './history.ts';
