import { probabilityOf } from '../base/odds.ts';
import type { Hand } from '../exercise/index.ts';
import type { PlayedNote } from '../listen/index.ts';
import type { ExtraKind } from '../match/index.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import { noteOf } from './found.ts';
import { recordOf } from './record.ts';
import type { Listening } from './types.ts';

/** A key struck at a step where it is not written. */
export interface Stranger {
  readonly note: PlayedNote;
  /** the key itself */
  readonly midi: number;
  /** the written note in whose place the first listening had put it, by its place among the matched ones; null: none */
  readonly place: number | null;
  /** what it is where it replaces nothing; null: nobody's, as it may be a ghost */
  readonly kind: ExtraKind | null;
}

/**
 * Keys that the first listening reported at a step, that are not written there, and that the sound bears out. A neighbour of a written
 * key is believed sooner: of 19 000 such keys on the development piano that nobody struck the first listening reported one, and the
 * closer look, which has met few slips, doubts half of those that were. Keys an octave below a written one are taken along, though the
 * first listening is right to leave them out of the report: only they tell that a note was struck an octave too low.
 */
export function strangersAt(listening: Listening, step: number): readonly Stranger[] {
  const { asker, heard, alignment, rechecks } = listening;
  const { matched, extras, semitoneShift } = alignment;
  const here = matched.flatMap((note, place) => (note.step === step ? [{ note, place }] : []));
  const written = here.map(({ note }) => note.expected.midi);
  const near = (note: PlayedNote): boolean => isNearest(listening, note, step);
  const ask = (note: PlayedNote, blind: 'extra' | 'not-heard'): boolean => {
    const midi = note.midi + semitoneShift;
    const hand = handBeside(listening, step);
    const answer = asker.askUnwritten(step, note.midi, hand)!;
    const isStruck = answer.logOdds > leastFor(midi, written);
    const decision = isStruck ? 'struck' : 'not-struck';
    rechecks.push(recordOf(step, midi, hand, 'extra', blind, answer, decision));
    return isStruck;
  };
  const inPlace = here.flatMap(({ note, place }): readonly Stranger[] => {
    if (note.verdict !== 'wrong') return [];
    const played = heard.notes[note.played]!;
    const midi = played.midi + semitoneShift;
    if (isOctaveOff(midi, written) && !ask(played, 'extra')) return [];
    return [{ note: played, midi, place, kind: isBeside(midi, written) ? 'slip' : 'other' }];
  });
  const beside = extras.flatMap(({ played, kind }): readonly Stranger[] => {
    const note = heard.notes[played]!;
    if (!near(note) || !ask(note, 'extra')) return [];
    return [{ note, midi: note.midi + semitoneShift, place: null, kind }];
  });
  const used = new Set([
    ...matched.flatMap((note) => ('played' in note ? [note.played] : [])),
    ...extras.map(({ played }) => played),
  ]);
  const below = heard.notes.flatMap((note, index): readonly Stranger[] => {
    const midi = note.midi + semitoneShift;
    const isBelow = written.includes(midi + 12) && !writtenAbout(listening, step).includes(midi);
    if (used.has(index) || !isBelow || !near(note) || !ask(note, 'not-heard')) return [];
    return [{ note, midi, place: null, kind: null }];
  });
  return [...inPlace, ...beside, ...below];
}

/**
 * A key that answers nothing, as sure as both listenings make it (strays.ts). Pianos kept out of the training, keys that the blind ear was
 * sure of: of those that nobody struck 4 in 1000 have log odds over 4.6, of those that were struck 70 in 100; over 0 they are 7 and 95 in 100.
 */
export function asSureAsBoth(
  { strays, alignment, asker, rechecks }: Listening,
  step: number,
  note: PlayedNote,
  kind: ExtraKind,
  believed = note.confidence,
): PlayedNote {
  if (kind === 'restart') return note;
  const sure = strays.sureOf(note, kind, believed);
  const { hand } = asker.steps[step]!.notes[0]!;
  const midi = note.midi + alignment.semitoneShift;
  const decision = sure > 0.5 ? 'struck' : 'unsure';
  rechecks.push(recordOf(step, midi, hand, 'extra', 'extra', strays.answer(note), decision));
  return { ...note, confidence: sure };
}

/**
 * A key in place of a written one is as sure as the surer of both listenings, and no surer than that it answers something at all: the written
 * one, which is not there, speaks for it, too.
 */
export function asSureInPlace(listening: Listening, step: number, note: PlayedNote): PlayedNote {
  const looked = probabilityOf(listening.strays.answer(note).logOdds);
  return asSureAsBoth(listening, step, note, 'other', Math.max(note.confidence, looked));
}

/** Log odds above which a reported key that is not written was struck. */
function leastFor(midi: number, written: readonly number[]): number {
  if (isBeside(midi, written)) return RECHECK_BOUNDS.besideWithdrawn;
  return isOctaveOff(midi, written) ? RECHECK_BOUNDS.octaveOff : RECHECK_BOUNDS.withdrawn;
}

function isOctaveOff(midi: number, written: readonly number[]): boolean {
  return written.includes(midi + 12) || written.includes(midi - 12);
}

function isBeside(midi: number, written: readonly number[]): boolean {
  return written.some((key) => Math.abs(key - midi) <= RECHECK_BOUNDS.slipSemitones);
}

/** Whether a note lies at a step's moment, and at no other's rather. */
export function isNearest({ asker: { steps } }: Listening, { timeSec }: PlayedNote, step: number): boolean {
  const apart = (at: number): number => Math.abs((steps[at]?.timeSec ?? Infinity) - timeSec);
  return (
    apart(step) <= RECHECK_BOUNDS.nearSec && apart(step) < apart(step - 1) && apart(step) <= apart(step + 1)
  );
}

/** The hand of a step's lowest note: a key that is not written is asked about as if it were of it. */
function handBeside({ alignment }: Listening, step: number): Hand {
  return alignment.matched.find((note) => note.step === step)!.expected.hand;
}

/** Keys written at a step and those beside it, which may ring on or come early. */
export function writtenAbout({ alignment }: Listening, step: number): readonly number[] {
  return alignment.matched.flatMap((note) => (Math.abs(note.step - step) <= 1 ? [note.expected.midi] : []));
}

/** Keys beside a written one that the blind ear half believed in and the closer look bears out: slips, or struck in its place. */
export function caughtBeside(listening: Listening, step: number): readonly Stranger[] {
  const { asker, heard, alignment, rechecks } = listening;
  const { halfBelieved, nearSec, caught, slipSemitones } = RECHECK_BOUNDS;
  const { written, timeSec } = asker.steps[step]!;
  if (timeSec === null) return [];
  const isNear = (one: { readonly timeSec: number }): boolean => Math.abs(one.timeSec - timeSec) < nearSec;
  const reported = heard.notes.filter(isNear).map(({ midi }) => midi);
  const keys = (heard.candidates ?? [])
    .filter((one) => isNear(one) && one.probability >= halfBelieved)
    .map(({ midi }) => midi)
    .filter((midi) => !written.includes(midi) && !reported.includes(midi))
    .filter((midi) => written.some((key) => Math.abs(key - midi) <= slipSemitones));
  const hand = handBeside(listening, step);
  return [...new Set(keys)].flatMap((midi): readonly Stranger[] => {
    const answer = asker.askUnwritten(step, midi, hand)!;
    const struck = answer.logOdds > caught;
    const decision = struck ? 'struck' : 'not-struck';
    rechecks.push(
      recordOf(step, midi + alignment.semitoneShift, hand, 'extra', 'not-heard', answer, decision),
    );
    const key = midi + alignment.semitoneShift;
    return struck ? [{ note: noteOf(heard, midi, answer), midi: key, place: null, kind: 'slip' }] : [];
  });
}
