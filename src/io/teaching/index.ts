export type * from './types.ts';
export { packSound } from './pack.ts';
export { studentIn } from './student-name.ts';
export { createTeachingStore } from './store.ts';
