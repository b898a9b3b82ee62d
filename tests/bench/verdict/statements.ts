import { tellWords } from '../../../src/engine/index.ts';
import type { Report } from '../../../src/engine/index.ts';
import { kindOf } from './kinds.ts';

/** All that a report tells its player: the sentence's situations first, then those of the list below it. */
export interface Told {
  /** codes of all that is stated, the gravest first */
  readonly codes: readonly string[];
  /** how many of them the sentence names */
  readonly named: number;
  /** faults of notes that sentence and list count */
  readonly noteFaults: number;
  /** steps that a line of the list, or a mark on the string, speaks of */
  readonly listed: ReadonlySet<number>;
  readonly marked: ReadonlySet<number>;
}

const ENGLISH = { language: 'en', naming: 'letters' } as const;

/** A report → what it tells, read from the list as it is shown and not from its first row alone. */
export function toldBy({ words }: Report): Told {
  const { said } = words;
  if (said === undefined) throw new Error('a report of this version tells its words as values');
  const { list } = tellWords(words, ENGLISH);
  return {
    codes: said.statements.map(({ situation }) => situation),
    named: said.named,
    noteFaults: said.statements
      .filter(({ situation }) => kindOf(situation) === 'notes')
      .reduce((sum, { faults }) => sum + faults, 0),
    listed: new Set(list.flatMap(({ steps }) => steps)),
    marked: new Set(words.steps),
  };
}

/**
 * Whether every note that the report itself calls wrong, missing or too many is counted, has its line and its mark. What was
 * gone back for, or lies before a late start or after a breaking off, is told as that; another exercise explains them all.
 */
export function isComplete(report: Report): boolean {
  const told = toldBy(report);
  if (told.codes.includes('other-exercise') || told.codes.includes('too-little')) return true;
  const faults = noteFaults(report);
  const repeats = new Set(faults.filter(({ repeat }) => repeat).map(({ step }) => step)).size;
  const others = faults.filter(({ repeat }) => !repeat).length;
  return (
    told.noteFaults === others + repeats &&
    faults.every(({ step }) => told.listed.has(step) && told.marked.has(step))
  );
}

/** Notes of the part that was played that are wrong, missing or too many. Keys of one step struck again are one fault. */
function noteFaults(report: Report): readonly { readonly step: number; readonly repeat: boolean }[] {
  const from = report.remarks.find((remark) => remark.kind === 'started-late')?.firstStep ?? 0;
  const to = report.remarks.find((remark) => remark.kind === 'broken-off')?.lastStep ?? Infinity;
  const struck = report.notes.flatMap(({ verdict, step, extraKind }) =>
    verdict === 'correct' || extraKind === 'restart' || step === null
      ? []
      : [{ step, repeat: extraKind === 'repeat' }],
  );
  const within = [...struck, ...report.missed.map(({ step }) => ({ step, repeat: false }))];
  return within.filter(({ step }) => step >= from && step <= to);
}
