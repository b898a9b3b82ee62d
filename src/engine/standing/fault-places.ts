import { keyFacts } from '../exercise/index.ts';
import type { Exercise, ExpectedStep, Hand, Hands } from '../exercise/index.ts';
import { median } from '../base/statistics.ts';
import type { Report } from '../report/index.ts';

/** A note wrong or missed; or struck late. */
export type FaultKind = 'note' | 'late';
/** Kinds of places that exercises have in every key: a degree of the scale, a crossing by its direction, the turn. */
export type FaultPlace = `degree-${1 | 2 | 3 | 4 | 5 | 6 | 7}` | 'crossing-up' | 'crossing-down' | 'turn';

/** One kind of place in one attempt: how many there are of all, how many faults the attempt has, how many of them hit it. */
export interface FaultsAt {
  readonly kind: FaultKind;
  readonly place: FaultPlace;
  readonly hands: Hands;
  readonly places: number;
  readonly marked: number;
  readonly faults: number;
  readonly hits: number;
}

/** Later than this share of an even interval is late, as at a crossing (`crossingShareOfInterval`); common practice, no source. */
const LATE_SHARE = 0.25;

/** A place at which a fault may fall: a note of one hand, or the interval into a step. */
interface Spot {
  readonly kinds: readonly FaultPlace[];
  readonly isFault: boolean;
}

/** A report of a whole exercise → its faults by kind of place, of each hand's notes and of the time. */
export function faultsIn(report: Report, exercise: Exercise): readonly FaultsAt[] {
  const hands: readonly Hand[] =
    exercise.choice.hands === 'together' ? ['left', 'right'] : [exercise.choice.hands];
  return [
    ...hands.flatMap((hand) => countedAt('note', hand, notesOf(report, exercise, hand))),
    ...countedAt('late', exercise.choice.hands, intervalsOf(report, exercise)),
  ];
}

function countedAt(kind: FaultKind, hands: Hands, spots: readonly Spot[]): readonly FaultsAt[] {
  const faults = spots.filter(({ isFault }) => isFault).length;
  const kinds = new Set(spots.flatMap((spot) => spot.kinds));
  return [...kinds].map((place) => {
    const marked = spots.filter((spot) => spot.kinds.includes(place));
    const hits = marked.filter(({ isFault }) => isFault).length;
    return { kind, place, hands, places: spots.length, marked: marked.length, faults, hits };
  });
}

function notesOf(report: Report, exercise: Exercise, hand: Hand): readonly Spot[] {
  const faulty = new Set([
    ...report.notes.flatMap((note) =>
      note.verdict === 'wrong' && note.hand === hand ? [`${note.step} ${letters(note.wantedName)}`] : [],
    ),
    ...report.missed.flatMap((note) => (note.hand === hand ? [`${note.step} ${letters(note.name)}`] : [])),
  ]);
  return exercise.steps.flatMap((step) =>
    step.notes
      .filter((note) => note.hand === hand)
      .map((note) => ({
        kinds: [degreeOf(exercise, note.name), ...placesOf(step, [hand])],
        isFault: faulty.has(`${step.step} ${letters(note.name)}`),
      })),
  );
}

function intervalsOf(report: Report, exercise: Exercise): readonly Spot[] {
  const { intervals } = report.measures;
  const usualMs = median(intervals.map(({ ioiMs }) => ioiMs));
  if (usualMs === undefined) return [];
  return intervals.flatMap(({ step: at, deviationMs, audible }) => {
    const step = exercise.steps[at];
    const [note] = step?.notes ?? [];
    if (step === undefined || note === undefined) return [];
    return [
      {
        kinds: [degreeOf(exercise, note.name), ...placesOf(step, ['left', 'right'])],
        isFault: audible && deviationMs > LATE_SHARE * usualMs,
      },
    ];
  });
}

function placesOf(step: ExpectedStep, hands: readonly Hand[]): readonly FaultPlace[] {
  const ways = step.crossings
    .filter(({ hand }) => hands.includes(hand))
    .map(({ direction }): FaultPlace => `crossing-${direction}`);
  return [...new Set(ways), ...(step.turn ? (['turn'] as const) : [])];
}

/** The letter and its accidentals, whatever octave it was played in. */
function letters(name: string): string {
  return name.replace(/-?\d+$/, '');
}

const ORDER = 'CDEFGAB';

/** A note as it is spelt → its degree in the key. */
function degreeOf({ choice }: Exercise, name: string): FaultPlace {
  const { tonic } = keyFacts(choice.key);
  const degree = ((ORDER.indexOf(name[0]!) - ORDER.indexOf(tonic[0]!) + 7) % 7) + 1;
  return `degree-${degree}` as FaultPlace;
}
