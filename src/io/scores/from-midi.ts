import { parseMidi } from 'midi-file';
import type { MidiData, MidiEvent } from 'midi-file';
import { ALL_KEYS, keyFacts, likelyKey, spellWithOctave, splitHands } from '../../engine/index.ts';
import type { Hand, WrittenNote } from '../../engine/index.ts';
import { ScoreError } from './types.ts';
import type { WholeScore } from './types.ts';

/** General MIDI's tenth channel holds drums (General MIDI 1). */
const DRUMS = 9;
/** Notation programs write on a grid; a file that was played in is laid on it: 32nds, or triplets of sixteenths. */
const GRIDS = [8, 6] as const;
const UNITS = [1, 2, 4, 8, 16, 32] as const;
const MOST_NOTES = 100_000;
const MICROSECONDS_A_MINUTE = 6e7;

/** A note as the file has it, quarter notes. */
interface Struck {
  readonly line: string;
  readonly at: number;
  readonly beats: number;
  readonly midi: number;
}

/** A Standard MIDI File, format 0 or 1 → the music in it, laid on a grid. Throws ScoreError. */
export function fromMidi(bytes: Uint8Array): WholeScore {
  const file = read(bytes);
  const { ticksPerBeat } = file.header;
  if (ticksPerBeat === undefined || ticksPerBeat <= 0) throw new ScoreError({ trouble: 'music-no-beats' });
  const events = file.tracks.flatMap((track, number) => timed(track, number, ticksPerBeat));
  const struck = notesIn(events);
  if (struck.length === 0) throw new ScoreError({ trouble: 'music-no-notes' });
  const tempo = events.find(({ event }) => event.type === 'setTempo')?.event;
  const title = file.tracks[0]?.find((event) => event.type === 'trackName');
  const endsAt = Math.max(...struck.map(({ at, beats }) => at + beats));
  const key = keyIn(events) ?? likelyKey(struck.map(({ midi, beats }) => ({ midi, weight: beats })));
  const facts = keyFacts(key);
  const hands = handsOf(struck);
  return {
    title: title?.type === 'trackName' ? utf8(title.text) : '',
    key,
    bpm: tempo?.type === 'setTempo' ? MICROSECONDS_A_MINUTE / tempo.microsecondsPerBeat : null,
    bars: barsIn(events, endsAt),
    notes: struck.map(({ at, beats, midi }, index): WrittenNote => ({
      name: spellWithOctave(facts, midi),
      hand: hands[index]!,
      beat: at,
      beats,
    })),
    hindrances: [],
  };
}

function read(bytes: Uint8Array): MidiData {
  try {
    return parseMidi(bytes);
  } catch {
    // The reader throws texts.
    throw new ScoreError({ trouble: 'music-damaged' });
  }
}

interface Timed {
  readonly track: number;
  readonly at: number;
  readonly event: MidiEvent;
}

function timed(track: readonly MidiEvent[], number: number, ticksPerBeat: number): readonly Timed[] {
  let ticks = 0;
  return track.map((event) => {
    ticks += event.deltaTime;
    return { track: number, at: ticks / ticksPerBeat, event };
  });
}

/** On the nearest line of either grid. */
function onGrid(beats: number): number {
  const lines = GRIDS.map((lines) => Math.round(beats * lines) / lines);
  return lines.reduce((a, b) => (Math.abs(b - beats) < Math.abs(a - beats) - 1e-9 ? b : a));
}

function notesIn(events: readonly Timed[]): readonly Struck[] {
  const down = new Map<string, { readonly at: number; readonly midi: number; readonly line: string }>();
  const notes: Struck[] = [];
  for (const { track, at, event } of events) {
    if (event.type !== 'noteOn' && event.type !== 'noteOff') continue;
    if (event.channel === DRUMS) continue;
    const line = `${track} ${event.channel}`;
    const id = `${line} ${event.noteNumber}`;
    const begun = down.get(id);
    if (begun !== undefined) {
      const from = onGrid(begun.at);
      notes.push({ line, midi: begun.midi, at: from, beats: Math.max(onGrid(at - begun.at), 1 / GRIDS[0]) });
      down.delete(id);
    }
    // A key struck with no velocity is let go (MIDI 1.0).
    if (event.type === 'noteOn' && event.velocity > 0) down.set(id, { at, midi: event.noteNumber, line });
    if (notes.length > MOST_NOTES) throw new ScoreError({ trouble: 'music-damaged' });
  }
  return notes.sort((a, b) => a.at - b.at || a.midi - b.midi);
}

/** Two tracks or channels are two hands, the lower one the left; of one, what lies low is the left hand's. */
function handsOf(struck: readonly Struck[]): readonly Hand[] {
  const lines = [...new Set(struck.map(({ line }) => line))];
  if (lines.length > 2) throw new ScoreError({ trouble: 'music-staves', staves: lines.length });
  if (lines.length === 1) return splitHands(struck, 1e-6);
  const heights = lines.map((line) => {
    const own = struck.filter((one) => one.line === line);
    return own.reduce((sum, { midi }) => sum + midi, 0) / own.length;
  });
  const lower = heights[0]! < heights[1]! ? lines[0] : lines[1];
  return struck.map(({ line }) => (line === lower ? 'left' : 'right'));
}

function keyIn(events: readonly Timed[]): string | null {
  const said = events.find(({ event }) => event.type === 'keySignature')?.event;
  if (said?.type !== 'keySignature') return null;
  const mode = said.scale === 1 ? 'minor' : 'major';
  const matches = (key: string): boolean => {
    const { signature, accidental } = keyFacts(key);
    return key.endsWith(mode) && (accidental === 'flats' ? -signature.length : signature.length) === said.key;
  };
  return ALL_KEYS.find(matches) ?? null;
}

/** Bars up to where the last note ends, by the time signatures; four quarters where none is said. */
function barsIn(events: readonly Timed[], endsAt: number): WholeScore['bars'] {
  const times = events
    .flatMap(({ at, event }) =>
      event.type === 'timeSignature' ? [{ at, count: event.numerator, unit: event.denominator }] : [],
    )
    .sort((a, b) => a.at - b.at);
  const bars: WholeScore['bars'][number][] = [];
  for (let beat = 0; beat < endsAt - 1e-6 && bars.length < MOST_NOTES;) {
    const said = times.findLast(({ at }) => at <= beat + 1e-6);
    const unit = UNITS.find((one) => one === said?.unit) ?? 4;
    const count = said !== undefined && said.count >= 1 && said.count <= 64 ? said.count : 4;
    const next = times.find(({ at }) => at > beat + 1e-6)?.at ?? Infinity;
    // An upbeat is a bar of its own time, which the next one ends.
    const beats = Math.min((4 * count) / unit, next - beat);
    bars.push({ beats, count, unit });
    beat += beats;
  }
  return bars;
}

/** The reader gives one letter a byte; the bytes are mostly UTF-8. */
function utf8(letters: string): string {
  return new TextDecoder().decode(Uint8Array.from(letters, (letter) => letter.charCodeAt(0) & 0xff));
}
