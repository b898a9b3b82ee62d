export { checked, parseJson } from './json.ts';
export { messageOf, plainName } from './text.ts';
export { readPiano } from './piano.ts';
