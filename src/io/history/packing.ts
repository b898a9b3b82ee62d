import type { AttemptSummary, ExerciseChoice, Intention, KeptNotice } from '../../engine/index.ts';
import type { Entry } from './types.ts';

/**
 * A drawer of entries as text. Exercises and texts stand once a drawer and rows are bare lists: a fifth of the letters, and five
 * years are read in a fifth of the time.
 */
interface Drawer {
  readonly exercises: readonly ExerciseChoice[];
  readonly texts: readonly KeptNotice[];
  /** what was to be practised; absent: nothing was */
  readonly intentions?: readonly Intention[];
  readonly rows: readonly Row[];
}

/** The order of its parts is that of version 1 of the journal; another order is another version. */
type Row = readonly [
  id: string,
  whenMs: number,
  state: number,
  name: number,
  remarks: readonly number[],
  device: number | null,
  choice: number | null,
  targetBpm: number | null,
  durationSec: number,
  soundBytes: number,
  reason: number,
  deletedMs: number | null,
  summary: readonly SummaryPart[] | null,
  intention?: Intention,
];
type SummaryPart = number | null;

const STATES = ['unanalysed', 'told', 'no-report'] as const;

/** Entries → text. */
export function packDrawer(entries: readonly Entry[]): string {
  const exercises = new Index<ExerciseChoice>();
  const texts = new Index<KeptNotice>();
  const intentions = new Index<Intention>();
  const rows = entries.map((entry): Row => [
    entry.id,
    entry.whenMs,
    STATES.indexOf(entry.state),
    texts.at(entry.name),
    entry.remarks.map((remark) => texts.at(remark)),
    entry.device === null ? null : texts.at(entry.device),
    entry.choice === null ? null : exercises.at(entry.choice),
    entry.targetBpm,
    entry.durationSec,
    entry.soundBytes,
    texts.at(entry.reason),
    entry.deletedMs,
    entry.summary === null ? null : packSummary(entry.summary, exercises, texts, intentions),
    ...intentionIn(entry),
  ]);
  const drawer: Drawer = {
    exercises: exercises.values,
    texts: texts.values,
    ...(intentions.values.length > 0 && { intentions: intentions.values }),
    rows,
  };
  return JSON.stringify(drawer);
}

/** Stands at the end, where there is one: version 0.1 reads no further. */
const intentionIn = ({ intention }: Entry): [Intention?] => (intention === undefined ? [] : [intention]);

/** Text → entries. */
export function unpackDrawer(drawer: string): readonly Entry[] {
  const { exercises, texts, intentions = [], rows } = JSON.parse(drawer) as Drawer;
  // Names are texts, whatever else stands among them.
  const text = (at: number): string => texts[at] as string;
  return rows.map((row): Entry => ({
    id: row[0],
    whenMs: row[1],
    state: STATES[row[2]]!,
    name: text(row[3]),
    remarks: row[4].map((at) => texts[at]!),
    device: row[5] === null ? null : text(row[5]),
    choice: row[6] === null ? null : exercises[row[6]]!,
    targetBpm: row[7],
    durationSec: row[8],
    soundBytes: row[9],
    reason: texts[row[10]]!,
    deletedMs: row[11],
    summary: row[12] === null ? null : unpackSummary(row[12], exercises, text, intentions),
    ...(row[13] !== undefined && { intention: row[13] }),
  }));
}

function packSummary(
  summary: AttemptSummary,
  exercises: Index<ExerciseChoice>,
  texts: Index<KeptNotice>,
  intentions: Index<Intention>,
): readonly SummaryPart[] {
  const { practised, loudnessDb, overlapMs } = summary;
  return [
    exercises.at(summary.exercise),
    summary.targetBpm,
    summary.expected,
    summary.wrong,
    summary.missed,
    summary.extra,
    summary.unsure,
    hundredths(summary.evennessPercent),
    hundredths(summary.tempoBpm),
    summary.lateCrossings,
    hundredths(summary.worstCrossingMs),
    hundredths(summary.chordSpreadMs),
    hundredths(summary.handsApartMs),
    texts.at(summary.situation),
    // Added since version 0.1, at the end, where that version does not look.
    ...withoutTail([
      practised === undefined ? null : intentions.at(practised.intention),
      practised === undefined ? null : Number(practised.done),
      ...[loudnessDb, overlapMs].flatMap((figure) => [
        hundredths(figure?.value ?? null),
        hundredths(figure?.plusMinus ?? null),
      ]),
    ]),
  ];
}

/** Each figure written out: by a loop over their names five years are opened in a sixth more of the time. */
function unpackSummary(
  parts: readonly SummaryPart[],
  exercises: readonly ExerciseChoice[],
  text: (at: number) => string,
  intentions: readonly Intention[],
): AttemptSummary {
  const [intention, done] = [intentions[parts[14] ?? -1], parts[15] === 1];
  return {
    exercise: exercises[parts[0]!]!,
    targetBpm: parts[1]!,
    expected: parts[2]!,
    wrong: parts[3]!,
    missed: parts[4]!,
    extra: parts[5]!,
    unsure: parts[6]!,
    evennessPercent: parts[7]!,
    tempoBpm: parts[8]!,
    lateCrossings: parts[9]!,
    worstCrossingMs: parts[10]!,
    chordSpreadMs: parts[11]!,
    handsApartMs: parts[12]!,
    ...uncertainAt(parts, 16, 'loudnessDb'),
    ...uncertainAt(parts, 18, 'overlapMs'),
    situation: text(parts[13]!),
    ...(intention !== undefined && { practised: { intention, done } }),
  };
}

/** What there is nothing of at the end takes no room. */
function withoutTail(parts: readonly SummaryPart[]): readonly SummaryPart[] {
  return parts.slice(0, parts.findLastIndex((part) => part !== null) + 1);
}

/** A figure and its ±, from a place on; nothing where there is none. */
function uncertainAt<Name extends string>(
  parts: readonly SummaryPart[],
  at: number,
  name: Name,
): Partial<Record<Name, { readonly value: number; readonly plusMinus: number }>> {
  const [value, plusMinus] = [parts[at] ?? null, parts[at + 1] ?? null];
  if (value === null || plusMinus === null) return {};
  return { [name]: { value, plusMinus } } as Record<Name, { value: number; plusMinus: number }>;
}

/** Figures are shown with one decimal at most; the report has them whole. */
function hundredths(value: number | null): number | null {
  return value === null ? null : Math.round(value * 100) / 100;
}

/** Values in the order in which they first came, each once. */
class Index<T> {
  readonly values: T[] = [];
  readonly #places = new Map<string, number>();

  at(value: T): number {
    const name = JSON.stringify(value);
    const known = this.#places.get(name);
    if (known !== undefined) return known;
    this.#places.set(name, this.values.length);
    return this.values.push(value) - 1;
  }
}
