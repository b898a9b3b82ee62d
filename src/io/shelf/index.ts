export type * from './types.ts';
export { createShelf } from './shelf.ts';
