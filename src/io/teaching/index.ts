export type * from './types.ts';
export { recordedWhen } from '../sorting/recorded-when.ts';
export { HEAD_BYTES, isHidden, isRecording } from '../sorting/recordings.ts';
export { folded, plainAscii } from './names.ts';
export { printOf } from './print.ts';
export { whoIs, whoseIs } from './roster.ts';
export type { Known, Whose } from './roster.ts';
export { toldBy } from './told.ts';
export { createTeachingStore } from './store.ts';
