export { checked, parseJson } from './json.ts';
export { plainName } from './text.ts';
