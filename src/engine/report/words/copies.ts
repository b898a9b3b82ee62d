import { sameIntention } from '../../exercise/index.ts';
import type { Intention, Practising } from '../../exercise/index.ts';
import type { Report } from '../types.ts';
import type { Scene } from './scene.ts';

/** So many notes of a copy, as a share, may be left unsure and it still counts as right. */
const UNSURE_SHARE = 0.2;

/** Each copy of what was practised, in order: whether it was right from its first note to its last, without a stop. */
export function copiesOf({ alignment, exercise }: Scene, { repeats }: Practising): readonly boolean[] {
  const copyOf = (step: number): number => exercise.steps[step]?.copy?.number ?? 0;
  const broken = new Set([
    ...alignment.extras.map(({ step }) => copyOf(step)),
    ...alignment.remarks.flatMap((remark) =>
      remark.kind === 'stopped' || remark.kind === 'restarted' ? [copyOf(remark.atStep)] : [],
    ),
  ]);
  return Array.from({ length: repeats }, (_, copy) => {
    const own = alignment.matched.filter(({ step }) => copyOf(step) === copy);
    const unsure = own.filter((note) => note.verdict === 'unsure' && note.heldOver !== true).length;
    const right = own.every(({ verdict }) => verdict === 'correct' || verdict === 'unsure');
    return right && unsure <= UNSURE_SHARE * own.length && !broken.has(copy);
  });
}

/** Right copies on end. */
export interface Row {
  readonly best: number;
  readonly atEnd: number;
  /** of this attempt, from its first on */
  readonly rightFromStart: number;
}

/**
 * The most right copies without a break, those at the end of the attempt before this one in the sitting counted on; and how many
 * stand at its end, to be counted on with.
 */
export function inARow({ inSitting }: Scene, intention: Intention, copies: readonly boolean[]): Row {
  let row = intention.rhythm === 'one-note-more' ? 0 : carriedFrom(inSitting.at(-1), intention);
  let best = 0;
  for (const right of copies) {
    row = right ? row + 1 : 0;
    best = Math.max(best, row);
  }
  const wrong = copies.indexOf(false);
  return { best, atEnd: row, rightFromStart: wrong === -1 ? copies.length : wrong };
}

/** What was done already is begun anew. */
function carriedFrom(before: Report | undefined, intention: Intention): number {
  const said = before?.words.said?.statements.at(0);
  if (before?.practised === undefined || said === undefined) return 0;
  if (!sameIntention(before.practised.intention, intention)) return 0;
  return said.situation === 'practised' && said.outcome !== 'done' ? said.rightAtEnd : 0;
}
