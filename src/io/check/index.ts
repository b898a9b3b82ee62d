export { parseJson, plainJson } from './json.ts';
export { CHOICE, exerciseOf, REPORT } from './report.ts';
export { nameOf, textOf } from './text.ts';
