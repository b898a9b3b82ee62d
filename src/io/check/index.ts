export { parseJson, plainJson } from './json.ts';
export { CHOICE, exerciseOf, REPORT } from './report.ts';
export { nameOf, plainName, plainText, textOf } from './text.ts';
