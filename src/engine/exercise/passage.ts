import { Note } from 'tonal';
import { UsageError } from '../base/errors.ts';
import { isKey } from '../base/units.ts';
import { crossingsInto } from './crossings.ts';
import { playedBy } from './played-by.ts';
import { PASSAGE_MOST } from './types.ts';
import type {
  Crossing,
  ExerciseChoice,
  ExpectedNote,
  ExpectedStep,
  Hand,
  Hands,
  OwnPassage,
  WrittenFinger,
  WrittenNote,
} from './types.ts';

/** Onsets nearer than this are one: a third of a quarter note is no round number. Quarter notes. */
const SAME_BEAT = 1e-3;
const FEWEST_STEPS = 2;

/** Whether its first bar is an upbeat: shorter than its time signature has it. */
export function hasUpbeat({ bars }: Pick<OwnPassage, 'bars'>): boolean {
  const first = bars[0]!;
  return bars.length > 1 && first.beats < (4 * first.count) / first.unit - SAME_BEAT;
}

/** Where each bar begins, quarter notes from the beginning of the first, and after them where the last ends. */
export function barlines({ bars }: Pick<OwnPassage, 'bars'>): readonly number[] {
  const lines = [0];
  for (const { beats } of bars) lines.push(lines.at(-1)! + beats);
  return lines;
}

/** The hands for which something is written. */
export function handsIn({ notes }: Pick<OwnPassage, 'notes'>): Hands {
  const left = notes.some(({ hand }) => hand === 'left');
  const right = notes.some(({ hand }) => hand === 'right');
  return left && right ? 'together' : left ? 'left' : 'right';
}

/**
 * A passage → its steps, for one hand or both: what begins at one moment is a step, a key that both hands have there is struck once.
 * Crossings follow from the fingers, where they are written.
 *
 * @throws UsageError where nothing of it can be played: no two moments for these hands, more than 16 bars, notes beyond the last bar or
 * the keyboard, or more keys at once than fingers.
 */
export function passageSteps(passage: OwnPassage, hands: Hands): readonly ExpectedStep[] {
  const lines = barlines(passage);
  requireBars(passage);
  const own = passage.notes.filter(({ hand }) => hands === 'together' || hand === hands);
  const moments = momentsOf(own);
  if (moments.length < FEWEST_STEPS)
    throw new UsageError(`hands=${hands} has fewer than two moments to play. Choose other hands.`);
  if (hands === 'together' && handsIn(passage) !== 'together')
    throw new UsageError(`hands=together needs notes for both hands. Choose ${handsIn(passage)}.`);
  const first = moments[0]!.beat;
  const lastNotes = new Map<Hand, readonly ExpectedNote[]>();
  return moments.map(({ beat, written }, step): ExpectedStep => {
    if (beat > lines.at(-1)! - SAME_BEAT)
      throw new UsageError(`beat=${beat} lies beyond the last bar, which ends at ${lines.at(-1)!}.`);
    const notes = keysAt(written);
    const crossings = (['left', 'right'] as const).flatMap((hand): readonly Crossing[] => {
      const struck = notes.filter((note) => note.hand === hand);
      if (struck.length === 0) return [];
      const before = lastNotes.get(hand) ?? [];
      lastNotes.set(hand, struck);
      return crossingsInto(struck, before, hand);
    });
    const bar = lines.findLastIndex((line) => line <= beat + SAME_BEAT);
    return {
      step,
      beat: beat - first,
      notes,
      crossings,
      turn: false,
      bar: bar + (hasUpbeat(passage) ? 0 : 1),
    };
  });
}

/** Quarter notes from one step to the next, on average. */
export function meanStepBeats(passage: OwnPassage, hands: Hands): number {
  const steps = passageSteps(passage, hands);
  return steps.at(-1)!.beat / (steps.length - 1);
}

/** A letter or two by which a passage is known: the same for the same keys at the same time, whatever its title, tempo or fingers. */
export function passageId({ notes }: Pick<OwnPassage, 'notes'>): string {
  const text = notes
    .map(({ name, hand, beat }) => `${Note.midi(name) ?? name}${hand[0]}${Math.round(beat / SAME_BEAT)}`)
    .sort()
    .join();
  // FNV-1a, 32 bits (Fowler, Noll & Vo).
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/**
 * Steps of a passage as some hands play it → the steps of the same moments as others do, two at least: each hand counts its own. Of what
 * is no passage all hands have the same steps.
 */
export function stepsForHands(
  { passage, hands }: Pick<ExerciseChoice, 'passage' | 'hands'>,
  others: Hands,
  { fromStep, toStep }: { readonly fromStep: number; readonly toStep: number },
): { readonly fromStep: number; readonly toStep: number } {
  if (passage === undefined || hands === others) return { fromStep, toStep };
  const own = passageSteps(passage, hands).map(({ beat }) => beat + firstBeat(passage, hands));
  const theirs = passageSteps(passage, others).map(({ beat }) => beat + firstBeat(passage, others));
  const from = theirs.findIndex((beat) => beat >= own[fromStep]! - SAME_BEAT);
  const to = theirs.findLastIndex((beat) => beat <= own[toStep]! + SAME_BEAT);
  const first = Math.min(from === -1 ? Infinity : from, Math.max(0, to), theirs.length - FEWEST_STEPS);
  return { fromStep: first, toStep: Math.max(to, first + FEWEST_STEPS - 1) };
}

const firstBeat = ({ notes }: OwnPassage, hands: Hands): number =>
  Math.min(...notes.flatMap(({ hand, beat }) => (hands === 'together' || hand === hands ? [beat] : [])));

/** A passage with another finger on a note of one of its steps, which are counted as these hands play them; null: left open. */
export function withFingerIn(
  passage: OwnPassage,
  hands: Hands,
  { hand, step, fromBottom }: Omit<WrittenFinger, 'finger'>,
  finger: number | null,
): OwnPassage {
  const found = passageSteps(passage, hands)[step];
  const note = found?.notes.flatMap((one) => playedBy(hand, one))[fromBottom];
  if (found === undefined || note === undefined)
    throw new UsageError(`step=${step}, fromBottom=${fromBottom} is no note of this passage.`);
  const beat = found.beat + firstBeat(passage, hands);
  const isIt = (one: WrittenNote): boolean =>
    one.hand === hand && Note.midi(one.name) === note.midi && Math.abs(one.beat - beat) < SAME_BEAT;
  const fingered = ({ finger: _, ...one }: WrittenNote): WrittenNote =>
    finger === null ? one : { ...one, finger };
  return { ...passage, notes: passage.notes.map((one) => (isIt(one) ? fingered(one) : one)) };
}

/** Whether two choices hold the same passage, or none. */
export function samePassage(a: OwnPassage | undefined, b: OwnPassage | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a === b || passageId(a) === passageId(b);
}

function requireBars(passage: OwnPassage): void {
  const count = passage.bars.length - (hasUpbeat(passage) ? 1 : 0);
  if (count > PASSAGE_MOST.bars)
    throw new UsageError(`bars=${count} is too long; a passage has ${PASSAGE_MOST.bars} at most. Cut it.`);
}

interface Moment {
  readonly beat: number;
  readonly written: readonly WrittenNote[];
}

function momentsOf(notes: readonly WrittenNote[]): readonly Moment[] {
  const moments: { beat: number; written: WrittenNote[] }[] = [];
  for (const note of [...notes].sort((a, b) => a.beat - b.beat)) {
    const last = moments.at(-1);
    if (last !== undefined && note.beat - last.beat < SAME_BEAT) last.written.push(note);
    else moments.push({ beat: note.beat, written: [note] });
  }
  return moments;
}

function keysAt(written: readonly WrittenNote[]): readonly ExpectedNote[] {
  const keys = new Map<number, ExpectedNote>();
  for (const { name, hand, finger, beats } of written) {
    const midi = Note.midi(name);
    if (midi === null || !isKey(midi))
      throw new UsageError(`name=${name} is no key of a piano; use A0 to C8.`);
    const other = keys.get(midi);
    // Both hands lie on it, as on a key of any exercise: it is the right hand's, and struck once.
    if (other !== undefined && other.hand !== hand) {
      const [right, left] = hand === 'left' ? [other.finger, finger ?? null] : [finger ?? null, other.finger];
      keys.set(midi, { ...other, hand: 'right', finger: right, leftFinger: left });
    }
    if (other === undefined) keys.set(midi, { midi, name, hand, finger: finger ?? null, beats });
  }
  if (keys.size > PASSAGE_MOST.keysAtOnce)
    throw new UsageError(`${keys.size} keys at once are too many; there are ten fingers.`);
  return [...keys.values()].sort((a, b) => a.midi - b.midi);
}
