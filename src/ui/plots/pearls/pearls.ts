import { timelineOf } from '../../../engine/index.ts';
import type { Exercise, ExtraKind, Hand, KeptNotice, Report } from '../../../engine/index.ts';

/** What every pearl on a string has. */
interface PearlPlace {
  /** place in reading order, from 0 */
  readonly index: number;
  readonly hand: Hand;
  /** the step that it answers, or during which it sounded */
  readonly step: number;
  /** when it sounded; of a note that did not sound, when it would have, seconds */
  readonly timeSec: number;
  readonly midi: number;
  /** the key that it stands for: of a wrong note, the one that was wanted */
  readonly writtenMidi: number;
  /** as the report spells it, e.g. "G#4" */
  readonly name: string;
  readonly finger: number | null;
}

/** One expected or extra note, as it will be drawn. */
export type Pearl = PearlPlace &
  (
    | { readonly kind: 'struck'; readonly levelDb: number }
    | { readonly kind: 'wrong'; readonly levelDb: number; readonly wantedName: string }
    | { readonly kind: 'extra'; readonly levelDb: number; readonly extraKind: ExtraKind }
    | { readonly kind: 'missed' }
    | { readonly kind: 'unsure'; readonly reason: KeptNotice }
  );

type Unnumbered = Pearl extends infer B ? (B extends Pearl ? Omit<B, 'index'> : never) : never;

/** Whether the pearl sounded, so that it can be played back. */
export function sounded(pearl: Pearl): boolean {
  return pearl.kind !== 'missed' && pearl.kind !== 'unsure';
}

/** Report → its pearls in order of time, then hand, then pitch. Silent ones stand where they would have sounded. */
export function threadPearls(report: Report, exercise: Exercise): readonly Pearl[] {
  const heard = report.notes.map((note): Unnumbered => {
    const place = {
      hand: note.hand ?? nearestHand(exercise, note.midi - semitonesMoved(report, exercise)),
      step: note.step ?? stepAt(report, note.timeSec),
      timeSec: note.timeSec,
      midi: note.midi,
      writtenMidi: note.wantedMidi ?? note.midi,
      name: note.name,
      finger: note.finger,
    };
    if (note.verdict === 'correct') return { ...place, kind: 'struck', levelDb: note.levelDb };
    if (note.verdict === 'wrong')
      return { ...place, kind: 'wrong', levelDb: note.levelDb, wantedName: note.wantedName ?? '' };
    return { ...place, kind: 'extra', levelDb: note.levelDb, extraKind: note.extraKind ?? 'other' };
  });
  const { tickSec } = timelineOf(report, exercise);
  const silent = [
    ...report.missed.map((note) => ({ ...note, kind: 'missed' as const })),
    ...report.unsure.map((note) => ({ ...note, kind: 'unsure' as const })),
  ].map((note): Unnumbered => {
    // Whatever octave the hand lies in: no hand has the same note twice in a chord.
    const written = exercise.steps[note.step]?.notes.find(
      (candidate) => candidate.hand === note.hand && (candidate.midi - note.midi) % 12 === 0,
    );
    const place = {
      hand: note.hand,
      step: note.step,
      timeSec: tickSec.get(note.step) ?? exercise.steps[note.step]?.beat ?? note.step,
      midi: note.midi,
      writtenMidi: note.midi,
      name: 'name' in note ? note.name : (written?.name ?? ''),
      finger: written?.finger ?? null,
    };
    return note.kind === 'missed'
      ? { ...place, kind: 'missed' }
      : { ...place, kind: 'unsure', reason: note.notice ?? note.reason };
  });
  return [...heard, ...silent]
    .sort((a, b) => a.timeSec - b.timeSec || b.hand.localeCompare(a.hand) || a.midi - b.midi)
    .map((pearl, index) => ({ ...pearl, index }));
}

function stepAt(report: Report, timeSec: number): number {
  const before = report.notes.filter((note) => note.step !== null && note.timeSec <= timeSec);
  return before.at(-1)?.step ?? 0;
}

/** How far the notes lie from where the exercise is written now: reports of earlier versions may have it in another octave. */
function semitonesMoved(report: Report, exercise: Exercise): number {
  const note = report.notes.find(({ verdict }) => verdict === 'correct');
  const written = exercise.steps[note?.step ?? -1]?.notes.find(
    ({ hand, midi }) => hand === note?.hand && (midi - note.midi) % 12 === 0,
  );
  return note === undefined || written === undefined ? 0 : note.midi - written.midi;
}

/** `midi`: as it would be where the exercise is written. */
function nearestHand(exercise: Exercise, midi: number): Hand {
  const written = exercise.steps.flatMap((step) => step.notes);
  const nearest = written.reduce<{ hand: Hand; distance: number }>(
    (best, note) => {
      const distance = Math.abs(note.midi - midi);
      return distance < best.distance ? { hand: note.hand, distance } : best;
    },
    { hand: written[0]?.hand ?? 'right', distance: Infinity },
  );
  return nearest.hand;
}
