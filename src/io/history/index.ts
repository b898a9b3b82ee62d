export type * from './types.ts';
export { createHistory } from './history.ts';
