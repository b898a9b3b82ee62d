export type * from './types.ts';
export { recordedWhen } from '../sorting/recorded-when.ts';
export { HEAD_BYTES, isHidden, isRecording } from '../sorting/recordings.ts';
export { studentIn } from './student-name.ts';
export { createTeachingStore } from './store.ts';
