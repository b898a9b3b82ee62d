import {
  keyFacts,
  midiOf,
  nameAt,
  PASSAGE_MOST,
  placeOf,
  spellWithOctave,
  withSign,
} from '../../engine/index.ts';
import type { Hand, WrittenNote } from '../../engine/index.ts';
import { inOrder, mostBeats, NEAR, type Sheet } from './sheet.ts';

/** A sheet after an edit, and the note that is now in hand; null: none is. */
export interface Edited {
  readonly sheet: Sheet;
  readonly chosen: WrittenNote | null;
}

const LOWEST_MIDI = 21;
const HIGHEST_MIDI = 108;
/** The note as it is after a change; where that cannot be, nothing changes. */
function replaced(sheet: Sheet, note: WrittenNote, by: WrittenNote): Edited {
  const midi = midiOf(by.name);
  if (midi === null || midi < LOWEST_MIDI || midi > HIGHEST_MIDI) return { sheet, chosen: note };
  const others = sheet.notes.filter((one) => one !== note && !isSame(one, by));
  return { sheet: { ...sheet, notes: inOrder([...others, by]) }, chosen: by };
}

const isSame = (one: WrittenNote, other: WrittenNote): boolean =>
  Math.abs(one.beat - other.beat) < NEAR &&
  one.hand === other.hand &&
  midiOf(one.name) === midiOf(other.name);

/** Up or down by steps of the key. */
export function stepped(sheet: Sheet, note: WrittenNote, by: number): Edited {
  return replaced(sheet, note, { ...note, name: nameAt(sheet.key, placeOf(note.name) + by) });
}

/** Up or down by a semitone: with the same letter as long as one sign does, else with the next one. */
export function raised(sheet: Sheet, note: WrittenNote, by: 1 | -1): Edited {
  const name = withSign(note.name, by) ?? spellWithOctave(keyFacts(sheet.key), midiOf(note.name)! + by);
  return replaced(sheet, note, { ...note, name });
}

/** What a hand begins together is given another length; with `onward` what comes after moves along. */
export function lengthened(sheet: Sheet, note: WrittenNote, beats: number, onward: boolean): Edited {
  const ends = note.beat + note.beats;
  const by = beats - note.beats;
  const isTogether = (one: WrittenNote): boolean =>
    one.hand === note.hand && Math.abs(one.beat - note.beat) < NEAR;
  const notes = sheet.notes.map((one): WrittenNote => {
    if (isTogether(one)) return { ...one, beats };
    return onward && one.beat > ends - NEAR ? { ...one, beat: rounded(one.beat + by) } : one;
  });
  return { sheet: within({ ...sheet, notes }), chosen: { ...note, beats } };
}

/** Given to the other hand. */
export function handed(sheet: Sheet, note: WrittenNote): Edited {
  const hand: Hand = note.hand === 'left' ? 'right' : 'left';
  return replaced({ ...sheet, hands: 'together' }, note, { ...note, hand });
}

/** Taken out; what was before it is in hand then. */
export function taken(sheet: Sheet, note: WrittenNote): Edited {
  const at = sheet.notes.indexOf(note);
  const notes = sheet.notes.filter((one) => one !== note);
  return { sheet: { ...sheet, notes }, chosen: notes[Math.max(0, at - 1)] ?? null };
}

/** A note put where it is said; one that stands there already is taken in hand. */
export function put(sheet: Sheet, note: WrittenNote): Edited {
  const there = sheet.notes.find((one) => isSame(one, note));
  if (there !== undefined) return { sheet, chosen: there };
  if (note.beat > mostBeats(sheet) - NEAR || sheet.notes.length >= PASSAGE_MOST.notes)
    return { sheet, chosen: null };
  // In a chord all are as long as the first.
  const beats = sheet.notes.find(
    (one) => one.hand === note.hand && Math.abs(one.beat - note.beat) < NEAR,
  )?.beats;
  const own = { ...note, beat: rounded(note.beat), beats: beats ?? note.beats };
  return { sheet: within({ ...sheet, notes: inOrder([...shortened(sheet.notes, own), own]) }), chosen: own };
}

/** What sounds on into a new note of its hand ends there. */
function shortened(notes: readonly WrittenNote[], { hand, beat }: WrittenNote): readonly WrittenNote[] {
  return notes.map((one) =>
    one.hand === hand && one.beat < beat - NEAR && one.beat + one.beats > beat + NEAR
      ? { ...one, beats: rounded(beat - one.beat) }
      : one,
  );
}

/** The same again after a note, as long as `beats`; with `onward` what comes after makes room. */
export function after(sheet: Sheet, note: WrittenNote, beats: number, onward: boolean): Edited {
  const at = rounded(note.beat + note.beats);
  const notes = onward
    ? sheet.notes.map((one) => (one.beat > at - NEAR ? { ...one, beat: rounded(one.beat + beats) } : one))
    : sheet.notes;
  return put({ ...sheet, notes }, { name: note.name, hand: note.hand, beat: at, beats });
}

/** On an empty sheet: the tonic, near the middle of the keyboard. */
export function first(sheet: Sheet, beats: number): Edited {
  const hand = sheet.hands === 'left' ? 'left' : 'right';
  return put(sheet, { name: `${sheet.key.split(' ')[0]!}${hand === 'left' ? 3 : 4}`, hand, beat: 0, beats });
}

/** A third higher, in the same chord. */
export function withThird(sheet: Sheet, note: WrittenNote): Edited {
  return put(sheet, { ...note, name: nameAt(sheet.key, placeOf(note.name) + 2) });
}

/** What no longer fits into the bars that there may be falls away. */
function within(sheet: Sheet): Sheet {
  const most = mostBeats(sheet);
  const notes = sheet.notes
    .filter(({ beat }) => beat < most - NEAR)
    .map((one) => (one.beat + one.beats > most ? { ...one, beats: rounded(most - one.beat) } : one));
  return { ...sheet, notes };
}

/** Thirds and sixteenths stay on their places however often they are moved. */
const GRID = 48;

function rounded(beats: number): number {
  const onGrid = Math.round(beats * GRID) / GRID;
  return Math.round((Math.abs(onGrid - beats) < NEAR ? onGrid : beats) * 1e4) / 1e4;
}
