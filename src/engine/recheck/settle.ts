import type { ExpectedNote, Hand } from '../exercise/index.ts';
import type { PlayedNote } from '../listen/index.ts';
import { crossesFingers } from '../match/index.ts';
import type { MatchedNote } from '../match/index.ts';
import type { Notice } from '../notices/index.ts';
import type { Answer } from './asker.ts';
import { MISTAKEN_FOR, RECHECK_BOUNDS } from './bounds.ts';
import { noteOf } from './found.ts';
import { recordOf } from './record.ts';
import {
  asSureAsBoth,
  asSureInPlace,
  caughtBeside,
  isNearest,
  strangersAt,
  writtenAbout,
} from './strangers.ts';
import type { Stranger } from './strangers.ts';
import type { HeardExtra, Listening, Recheck } from './types.ts';

/** What became of one written note. */
export interface Settled {
  /** its place among the matched notes */
  readonly place: number;
  readonly verdict: MatchedNote['verdict'];
  /** the note that stands for it now; null: none */
  readonly note: PlayedNote | null;
  /** null: of one that is sure */
  readonly reason: Notice | null;
}

/** What became of one step. */
export interface SettledStep {
  readonly written: readonly Settled[];
  readonly extras: readonly HeardExtra[];
}

/** A written note with what both listenings say of it. */
interface Written {
  readonly place: number;
  readonly matched: MatchedNote;
  /** what the first listening had for it */
  readonly before: PlayedNote | null;
  readonly answer: Answer;
  readonly decision: Recheck['decision'];
}

/**
 * One step, listened for again, all its keys at once: a key that is not written and a written one that is not there explain each
 * other. What is asked is added to `rechecks`.
 */
export function settleStep(listening: Listening, step: number): SettledStep {
  const { alignment, answers, rechecks } = listening;
  const own = alignment.matched.flatMap((matched, place) => (matched.step === step ? [place] : []));
  const written = own.flatMap((place): readonly Written[] => {
    const matched = alignment.matched[place]!;
    const answer = answers[place]!;
    if (answer === null) return [];
    const { midi, hand } = matched.expected;
    const decision = decide(answer.logOdds, matched.verdict === 'correct');
    rechecks.push(recordOf(step, midi, hand, 'written', matched.verdict, answer, decision));
    return [{ place, matched, before: noteBefore(listening, place), answer, decision }];
  });
  if (written.length === 0)
    return { written: own.map((place) => asBefore(listening, place)), extras: extrasBefore(listening, step) };
  const caught = caughtBeside(listening, step);
  const strangers = [...strangersAt(listening, step), ...caught];
  const pairs = pairsOf(listening, written, strangers);
  const heardTwice = (one: Stranger): PlayedNote =>
    caught.includes(one) ? one.note : asSureAsBoth(listening, step, one.note, one.kind ?? 'other');
  const inPlace = (one: Stranger): PlayedNote =>
    caught.includes(one) ? one.note : asSureInPlace(listening, step, one.note);
  const settled = written.map((one): Settled => {
    const stranger = pairs.get(one.place);
    return stranger === undefined
      ? settle(listening, one)
      : { place: one.place, verdict: 'wrong', note: inPlace(stranger), reason: null };
  });
  const found = settled.flatMap(({ note }) => note ?? []);
  const paired = [...pairs.values()];
  const isFound = (one: Stranger): boolean =>
    caught.includes(one)
      ? found.some(({ midi }) => midi === one.note.midi)
      : paired.includes(one) || found.includes(one.note);
  const extras = strangers.flatMap((one): readonly HeardExtra[] =>
    one.kind === null || isFound(one)
      ? []
      : [
          {
            note: heardTwice(one),
            kind: one.kind,
            step,
          },
        ],
  );
  return { written: settled, extras };
}

/**
 * Written notes that were not struck, each with the key that was struck in its place: first the note that is surest to be absent, and the
 * nearest key. Fingers do not cross, and a key that is written here too is its own second sound.
 */
function pairsOf(
  listening: Listening,
  written: readonly Written[],
  strangers: readonly Stranger[],
): ReadonlyMap<number, Stranger> {
  const pairs = written
    .flatMap((one) =>
      strangers.flatMap((stranger) => {
        const { expected, step } = one.matched;
        const about = notesAt(listening, step);
        if (about.some(({ midi }) => midi === stranger.midi)) return [];
        const apart = Math.abs(stranger.midi - expected.midi);
        const isOwn = stranger.place === one.place;
        // An octave too low it lies under the hand's other fingers.
        const fits =
          apart === 12 ||
          (apart <= RECHECK_BOUNDS.wrongSemitones && !crossesFingers(stranger.midi, expected, about));
        if (!(isOwn || fits) || !isAbsentBeside(listening, one, stranger)) return [];
        return [{ one, stranger, cost: one.answer.logOdds + apart }];
      }),
    )
    .sort((a, b) => a.cost - b.cost);
  const paired = new Map<number, Stranger>();
  for (const { one, stranger } of pairs)
    if (!paired.has(one.place) && ![...paired.values()].includes(stranger)) paired.set(one.place, stranger);
  return paired;
}

/**
 * A written note beside a key that is not written: was it left out for that? A key an octave below sounds at all its partials, and two
 * keys an octave apart for one are rarer by far than the one for the other; a neighbour was as likely caught with it, but then it is the
 * written one that sounds more surely.
 */
function isAbsentBeside(
  { strays }: Listening,
  { matched, decision, answer, place }: Written,
  stranger: Stranger,
): boolean {
  const { besideOctaveBelow, besideOther, besideNeighbour, neighbourSurer, slipSemitones } = RECHECK_BOUNDS;
  const below = matched.expected.midi - stranger.midi;
  if (below === 12) return stranger.place === place || answer.logOdds < besideOctaveBelow;
  if (matched.verdict === 'correct') return decision !== 'struck';
  if (Math.abs(below) > slipSemitones) return answer.logOdds < besideOther;
  return answer.logOdds < Math.min(besideNeighbour, strays.answer(stranger.note).logOdds - neighbourSurer);
}

/** One written note in whose place nothing was heard so far. */
function settle(listening: Listening, { place, matched, before, answer, decision }: Written): Settled {
  const { heard, alignment, hands } = listening;
  const { expected, verdict, step } = matched;
  const isThere = hands[expected.hand].presence === 'there';
  const unsure: Settled = {
    place,
    verdict: 'unsure',
    note: null,
    reason: verdict === 'unsure' ? matched.reason : { notice: 'too-faint', name: expected.name },
  };
  if (verdict === 'correct' && decision !== 'not-struck') {
    const note = moved(before!, answer);
    return decision === 'struck' ? { ...unsure, verdict, note } : { ...unsure, note };
  }
  if (decision !== 'not-struck' && !isThere) return asBefore(listening, place);
  if (decision === 'struck') {
    const midi = expected.midi - alignment.semitoneShift;
    return { ...unsure, verdict: 'correct', note: noteOf(heard, midi, answer) };
  }
  // Something too faint to say which key sounded in its place: that stands.
  if (verdict === 'unsure' && before !== null) return { ...unsure, note: before };
  if (decision === 'unsure' || !isMissing(listening, matched, answer)) return unsure;
  const other = inItsPlace(listening, step, expected.midi, expected.hand);
  return { ...unsure, verdict: other === null ? 'missed' : 'wrong', note: other };
}

/**
 * A note is missing only where its hand plays: of a hand that is not there at all one says so, and not note by note, or it lies in another
 * octave. One that its octave may cover, only where it lies far below what the hand's others show.
 */
function isMissing(listening: Listening, { step, expected }: MatchedNote, { logOdds }: Answer): boolean {
  const isCovered = notesAt(listening, step).some(
    ({ hand, midi }) => hand !== expected.hand && [12, 24].includes(expected.midi - midi),
  );
  const { presence, leftOut } = listening.hands[expected.hand];
  return presence === 'there' && (!isCovered || leftOut(logOdds) >= RECHECK_BOUNDS.leftOut);
}

/**
 * A key that the first listening did not report, struck in place of a note that was not. Keys of the steps beside it ring on or come early,
 * and say nothing.
 */
function inItsPlace(listening: Listening, step: number, midi: number, hand: Hand): PlayedNote | null {
  const { asker, heard, alignment, rechecks } = listening;
  const { timeSec } = asker.steps[step]!;
  const about = writtenAbout(listening, step);
  const near = heard.notes.filter((one) => Math.abs(one.timeSec - timeSec!) < RECHECK_BOUNDS.nearSec);
  for (const semitones of MISTAKEN_FOR) {
    const other = midi - alignment.semitoneShift + semitones;
    if (about.includes(midi + semitones) || near.some((one) => one.midi === other)) continue;
    const answer = asker.askUnwritten(step, other, hand);
    if (answer === null || answer.logOdds <= RECHECK_BOUNDS.inItsPlace) continue;
    rechecks.push(recordOf(step, midi + semitones, hand, 'in-its-place', 'not-heard', answer, 'struck'));
    return noteOf(heard, other, answer);
  }
  return null;
}

/** What is written at a step, at the octave actually played. */
function notesAt({ alignment }: Listening, step: number): readonly ExpectedNote[] {
  return alignment.matched.flatMap((note) => (note.step === step ? [note.expected] : []));
}

function decide(logOdds: number, reported: boolean): Recheck['decision'] {
  const { struck, notStruck, doubtful, overruled } = RECHECK_BOUNDS;
  if (logOdds > (reported ? doubtful : struck)) return 'struck';
  return logOdds < (reported ? overruled : notStruck) ? 'not-struck' : 'unsure';
}

function asBefore(listening: Listening, place: number): Settled {
  const matched = listening.alignment.matched[place]!;
  const reason = matched.verdict === 'unsure' ? matched.reason : null;
  const before = noteBefore(listening, place);
  const note =
    before !== null && matched.verdict === 'wrong'
      ? asSureAsBoth(listening, matched.step, before, 'other')
      : before;
  return { place, verdict: matched.verdict, note, reason };
}

/** Extras at a step that nothing was asked about. */
function extrasBefore(listening: Listening, step: number): readonly HeardExtra[] {
  const { heard, alignment } = listening;
  return alignment.extras.flatMap(({ played, kind, step: beside }) => {
    const note = heard.notes[played]!;
    return isNearest(listening, note, step)
      ? [{ note: asSureAsBoth(listening, beside, note, kind), kind, step: beside }]
      : [];
  });
}

function noteBefore({ heard, alignment }: Listening, place: number): PlayedNote | null {
  const matched = alignment.matched[place]!;
  return 'played' in matched && matched.played !== undefined ? heard.notes[matched.played]! : null;
}

/** The same note at the moment that the closer look gives it, if that is not far away. */
function moved(note: PlayedNote, { timeSec }: Answer): PlayedNote {
  return Math.abs(timeSec - note.timeSec) > RECHECK_BOUNDS.mostMovedSec ? note : { ...note, timeSec };
}
