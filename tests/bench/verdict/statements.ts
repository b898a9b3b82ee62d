import type { Report } from '../../../src/engine/index.ts';

/** A report → the codes of all that its words state, the gravest first. */
export function statementsOf({ words }: Report): readonly string[] {
  return [words.situation];
}
