import { parse, parseAbcTunes } from 'musicxml-io';
import type { Clef, Measure, MeasureAttributes, NoteEntry, Part, Score } from 'musicxml-io';
import type { Hand, WrittenNote } from '../../engine/index.ts';
import { ScoreError } from './types.ts';
import type { Hindrance, WholeScore } from './types.ts';

/** Round the circle of fifths from seven flats to seven sharps. */
const MAJOR = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#'];
const MINOR = ['Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#'];
const STEPS = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 } as const;
const UNITS = [1, 2, 4, 8, 16, 32] as const;
const NEAR = 1e-6;
/** Signs that lead to a key of a piano; all others lead between two (MusicXML 4.0, accidental-value). */
const SIGNS: ReadonlySet<string> = new Set([
  ...['sharp', 'flat', 'natural', 'double-sharp', 'double-flat', 'sharp-sharp', 'flat-flat'],
  ...['natural-sharp', 'natural-flat', 'triple-sharp', 'triple-flat'],
]);

/** So many bars and staves are looked at; what is longer is no music that anybody cuts a passage out of. */
const MOST_BARS = 3000;

/** MusicXML 4.0, partwise, as text → the music in it. Throws ScoreError. */
export function fromMusicXml(text: string): WholeScore {
  // No notation program defines entities; who does so wants to fill a memory (XML 1.0, 4.2).
  if (/<!ENTITY/i.test(text)) throw new ScoreError({ trouble: 'music-entities' });
  if (/<score-timewise/.test(text)) throw new ScoreError({ trouble: 'music-timewise' });
  // The reader takes what there is: of a file cut short, a part of the music.
  if (!/<\/score-partwise\s*>[^<]*(<!--[^]*-->\s*)?$/.test(text))
    throw new ScoreError({ trouble: 'music-damaged' });
  return wholeOf(read(() => parse(text)));
}

/** ABC 2.1 as text → the tunes in it. Throws ScoreError. */
export function fromAbc(text: string): readonly WholeScore[] {
  return read(() => parseAbcTunes(withChordTies(text))).map(wholeOf);
}

/** A tie after a chord ties each of its notes (ABC 2.1, 4.17); the reader takes it for the last one's. */
function withChordTies(text: string): string {
  return text.replace(/\[([^\]|:"]+)\]([\d/]*)-/g, (_, notes: string, length: string) => {
    return `[${notes.replace(/[A-Ga-g][,']*[\d/]*/g, (note) => `${note}-`)}]${length}`;
  });
}

function read<T>(reading: () => T): T {
  try {
    return reading();
  } catch {
    // It throws whatever comes to its mind, a full stack too.
    throw new ScoreError({ trouble: 'music-damaged' });
  }
}

/** A staff of the score: of which part, its number there. */
interface StaffOf {
  readonly part: Part;
  readonly staff: number;
  readonly hand: Hand;
}

function wholeOf(score: Score): WholeScore {
  const sounding = score.parts.filter(({ measures }) =>
    measures.some(({ entries }) => entries.some(isSounding)),
  );
  if (sounding.length === 0) throw new ScoreError({ trouble: 'music-no-notes' });
  const staves = stavesOf(sounding);
  const parts = sounding.filter((part) => staves.some((one) => one.part === part));
  const count = Math.max(...parts.map(({ measures }) => measures.length));
  if (count > MOST_BARS) throw new ScoreError({ trouble: 'music-too-long', bars: count, most: MOST_BARS });
  const readers = parts.map((part) => new PartReader(part, staves));
  const bars: WholeScore['bars'][number][] = [];
  const notes: WrittenNote[] = [];
  let beat = 0;
  for (let at = 0; at < count; at++) {
    const read = readers.map((reader) => reader.bar(at, beat));
    const { count: beats, unit } = readers[0]!.time;
    const nominal = (4 * beats) / unit;
    const filled = Math.max(...read.map(({ length }) => length));
    // An upbeat is short; a bar cut short at the end, whose rest the upbeat has, lasts as long as any.
    const length = filled > nominal + NEAR || (at === 0 && filled > NEAR) ? filled : nominal;
    bars.push({ beats: length, count: beats, unit });
    notes.push(...read.flatMap((one) => one.notes));
    beat += length;
  }
  const [first] = readers;
  return {
    title: score.metadata.movementTitle ?? score.metadata.workTitle ?? '',
    key: first!.key,
    bpm: readers.map(({ bpm }) => bpm).find((bpm) => bpm !== null) ?? null,
    bars,
    notes: readers.flatMap((reader) => reader.tied(notes)),
    hindrances: readers.flatMap(({ hindrances }) => hindrances),
  };
}

const isSounding = (entry: Measure['entries'][number]): boolean =>
  entry.type === 'note' && entry.rest === undefined && entry.cue !== true;

/** One or two staves in all; the upper one is the right hand's, and one alone is whose clef it has. */
function stavesOf(parts: readonly Part[]): readonly StaffOf[] {
  const written = parts.flatMap((part) => {
    const used = new Set(
      part.measures.flatMap(({ entries }) => entries.filter(isSounding).map((one) => staffIn(one))),
    );
    return [...used].sort((a, b) => a - b).map((staff) => ({ part, staff }));
  });
  // A tablature says for fingers on strings what the staff above it says in notes.
  const inNotes = written.filter((one) => clefOf(one)?.sign !== 'TAB');
  const all = inNotes.length === 0 ? written : inNotes;
  if (all.length > 2) throw new ScoreError({ trouble: 'music-staves', staves: all.length });
  if (all.length === 1) {
    return [{ ...all[0]!, hand: clefOf(all[0]!)?.sign === 'F' ? 'left' : 'right' }];
  }
  return all.map((one, at) => ({ ...one, hand: at === 0 ? 'right' : 'left' }));
}

/** The first clef of a staff. */
function clefOf({ part, staff }: Pick<StaffOf, 'part' | 'staff'>): Clef | undefined {
  const clefs = part.measures.flatMap(({ attributes }) => attributes?.clef ?? []);
  return clefs.find((one) => (one.staff ?? 1) === staff);
}

const staffIn = (entry: Measure['entries'][number]): number =>
  entry.type === 'note' ? (entry.staff ?? 1) : 1;

/** One part, read bar by bar: what was said of key, time and divisions holds until something else is. */
class PartReader {
  key = 'C major';
  bpm: number | null = null;
  time: { readonly count: number; readonly unit: (typeof UNITS)[number] } = { count: 4, unit: 4 };
  readonly #part: Part;
  readonly #hands: ReadonlyMap<number, Hand>;
  readonly hindrances: Hindrance[] = [];
  #divisions = 1;
  /** how far it sounds above what is written, as a guitar or a double bass does below */
  #octaves = 0;
  #knowsKey = false;
  /** notes that are tied on, by hand and key */
  readonly #open = new Map<string, { note: WrittenNote; beats: number }>();
  readonly #longer = new Map<WrittenNote, number>();

  constructor(part: Part, staves: readonly StaffOf[]) {
    this.#part = part;
    this.#hands = new Map(staves.filter((one) => one.part === part).map(({ staff, hand }) => [staff, hand]));
  }

  /** The notes of a bar that begins at a beat, and how far its voices reach, quarter notes. */
  bar(at: number, fromBeat: number): { readonly notes: readonly WrittenNote[]; readonly length: number } {
    const measure = this.#part.measures[at];
    if (measure === undefined) return { notes: [], length: 0 };
    this.#attributes(measure.attributes);
    // One bracket upon another: a first ending and a second, of which each time one is played.
    if (hasEnding(measure, 'start') && hasEnding(this.#part.measures[at - 1], 'stop', 'discontinue'))
      this.#hinder('music-endings', at - 1, at);
    const notes: WrittenNote[] = [];
    let [position, onset, length] = [0, 0, 0];
    for (const entry of measure.entries) {
      if (entry.type === 'attributes') this.#attributes(entry.attributes);
      if (entry.type === 'sound' || entry.type === 'direction')
        this.#tempo(entry.type === 'sound' ? entry.tempo : entry.sound?.tempo);
      if (entry.type === 'backup') position = Math.max(0, position - entry.duration / this.#divisions);
      if (entry.type === 'forward') position += entry.duration / this.#divisions;
      if (entry.type === 'note' && entry.cue !== true) {
        const why = this.#hands.has(staffIn(entry)) ? whyNotOnPiano(entry) : null;
        if (why !== null) this.#hinder(why, at);
        if (entry.grace !== undefined) continue;
        const beats = entry.duration / this.#divisions;
        if (entry.chord !== true) {
          onset = position;
          position += beats;
        }
        notes.push(...this.#note(entry, fromBeat + onset, beats));
      }
      if (!Number.isFinite(position)) throw new ScoreError({ trouble: 'music-damaged' });
      length = Math.max(length, position);
    }
    return { notes, length };
  }

  /** Of all notes those of this part, as long as they are tied on. */
  tied(notes: readonly WrittenNote[]): readonly WrittenNote[] {
    return notes.flatMap((note) => {
      const beats = this.#longer.get(note);
      return beats === undefined ? [] : [{ ...note, beats }];
    });
  }

  #hinder(trouble: Hindrance['trouble'], from: number, to = from): void {
    this.hindrances.push({ from, to, trouble });
  }

  #note(entry: NoteEntry, beat: number, beats: number): readonly WrittenNote[] {
    const hand = this.#hands.get(staffIn(entry));
    if (entry.rest !== undefined || entry.pitch === undefined || hand === undefined || !(beats > 0))
      return [];
    const pitch = { ...entry.pitch, octave: entry.pitch.octave + this.#octaves };
    const name = nameOf(pitch);
    const id = `${hand} ${12 * pitch.octave + STEPS[pitch.step] + (pitch.alter ?? 0)}`;
    const ties = [...(entry.ties ?? []), ...(entry.tie === undefined ? [] : [entry.tie])].map(
      ({ type }) => type,
    );
    const before = this.#open.get(id);
    this.#open.delete(id);
    const goesOn = ties.includes('start') || ties.includes('continue');
    const isTied = ties.includes('stop') || ties.includes('continue');
    if (before !== undefined && isTied && Math.abs(before.note.beat + before.beats - beat) < NEAR) {
      const longer = { note: before.note, beats: before.beats + beats };
      this.#longer.set(longer.note, longer.beats);
      if (goesOn) this.#open.set(id, longer);
      return [];
    }
    const finger = fingerOf(entry);
    const note = { name, hand, beat, beats, ...(finger !== null && { finger }) };
    this.#longer.set(note, beats);
    if (goesOn) this.#open.set(id, { note, beats });
    return [note];
  }

  #attributes(said: MeasureAttributes | undefined): void {
    if (said === undefined) return;
    const { divisions, key, time, transpose } = said;
    if (transpose !== undefined) {
      if (transpose.chromatic % 12 !== 0) throw new ScoreError({ trouble: 'music-transposing' });
      this.#octaves = transpose.chromatic / 12 + (transpose.octaveChange ?? 0);
    }
    if (divisions !== undefined) {
      if (!(divisions > 0)) throw new ScoreError({ trouble: 'music-damaged' });
      this.#divisions = divisions;
    }
    // Of signs that are put together one by one no key is known.
    if (key !== undefined && key.keySteps === undefined && !this.#knowsKey) {
      this.#knowsKey = true;
      const minor = key.mode === 'minor' || key.mode === 'aeolian';
      this.key = `${(minor ? MINOR : MAJOR)[key.fifths + 7] ?? 'C'} ${minor && Math.abs(key.fifths) <= 7 ? 'minor' : 'major'}`;
    }
    if (time !== undefined && time.senzaMisura !== true) {
      const count = String(time.beats)
        .split('+')
        .reduce((sum, one) => sum + Number(one), 0);
      const unit = UNITS.find((one) => one === time.beatType);
      if (unit !== undefined && count >= 1 && count <= 64) this.time = { count, unit };
    }
  }

  #tempo(tempo: number | undefined): void {
    if (tempo !== undefined && tempo >= 1 && tempo <= 1000) this.bpm ??= tempo;
  }
}

/** Why a piano cannot play what is written there; null: it can. */
function whyNotOnPiano({
  grace,
  rest,
  pitch,
  unpitched,
  accidental,
}: NoteEntry): Hindrance['trouble'] | null {
  if (grace !== undefined) return 'music-grace';
  if (rest !== undefined) return null;
  if (pitch === undefined || unpitched !== undefined) return 'music-no-pitches';
  const isKey = Number.isInteger(pitch.alter ?? 0) && SIGNS.has(accidental?.value ?? 'natural');
  return isKey ? null : 'music-between-keys';
}

type EndingType = 'start' | 'stop' | 'discontinue';

const hasEnding = (measure: Measure | undefined, ...types: readonly EndingType[]): boolean =>
  measure?.barlines?.some(({ ending }) => ending !== undefined && types.includes(ending.type)) ?? false;

function nameOf({ step, alter = 0, octave }: NonNullable<NoteEntry['pitch']>): string {
  const whole = Math.round(alter);
  return `${step}${(whole < 0 ? 'b' : '#').repeat(Math.abs(whole))}${octave}`;
}

function fingerOf({ notations }: NoteEntry): number | null {
  for (const one of notations ?? []) {
    if (one.type !== 'technical' || one.technical !== 'fingering') continue;
    const finger = Number(one.fingering ?? one.text);
    if (Number.isInteger(finger) && finger >= 1 && finger <= 5) return finger;
  }
  return null;
}
