export { checked, parseJson } from './json.ts';
export { plainName } from './text.ts';
export { readHandsPlayed, readPiano } from './piano.ts';
export { readChoice, readPractice, readUnfinished } from './choice.ts';
export { readSyllabus } from './syllabus.ts';
