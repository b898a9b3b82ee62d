import { writeMidi } from 'midi-file';
import type { MidiEvent } from 'midi-file';
import { isDotted, keyFacts } from '../../engine/index.ts';
import type { Exercise, Hand, Report } from '../../engine/index.ts';
import { beatsStruck, stretchesOf, type Beat, type Stretch } from './beats.ts';

/** What a MIDI file needs of a note. */
export interface MidiNote {
  readonly timeSec: number;
  /** null: not known; then it lasts until the key is struck again, at most a second */
  readonly releaseSec: number | null;
  readonly midi: number;
  readonly levelDb: number;
  /** which track it lies on, where there is one for each hand */
  readonly hand?: Hand | null;
}

/** What is known of an attempt's music, besides its notes. */
export interface MidiMusic {
  /** beats that were struck, ascending; the tempo follows them, and bars have four */
  readonly beats: readonly Beat[];
  /** beats a minute after the last of them */
  readonly tempoBpm: number;
  /** a beat is a dotted quarter; else a quarter */
  readonly dotted: boolean;
  /** e.g. "F# minor" */
  readonly key: string;
  /** a track each, by the name given; the first also has what no hand is known of */
  readonly hands: readonly { readonly hand: Hand; readonly name: string }[];
}

export interface MidiOptions {
  /** name of the file, in any letters */
  readonly title: string;
  /** null: notes at their times on one track, at a tempo that says nothing */
  readonly music: MidiMusic | null;
}
const MIDI_DEFAULTS: MidiOptions = { title: 'Heard notes', music: null };

/**
 * 19 200 ticks a quarter: at 120 quarters a minute a tick is 26 µs, at 40 78 µs. The division is a 15-bit number (Standard MIDI Files
 * 1.0, "header chunks"), 32 767 at most.
 */
const TICKS_A_QUARTER = 19_200;
const PLAIN_BPM = 120;

/** Velocity of the median level, and steps of velocity a dB; common practice, no source: MIDI fixes no loudness. */
const MIDDLE_VELOCITY = 64;
const VELOCITY_A_DB = 2.5;

const LONGEST_UNKNOWN_SEC = 1;
const SHORTEST_SEC = 0.01;

/**
 * Notes → a Standard MIDI File, with every onset at its time to within a tick: format 0, or with `music` format 1, with a track for each
 * hand under one of title, tempo, bars and key. Texts are UTF-8.
 */
export function encodeMidi(
  notes: readonly MidiNote[],
  options: Partial<MidiOptions> = {},
): Uint8Array<ArrayBuffer> {
  const { title, music } = { ...MIDI_DEFAULTS, ...options };
  const quartersABeat = music?.dotted === true ? 1.5 : 1;
  const stretches = stretchesOf(music?.beats ?? [], 60 / (music?.tempoBpm ?? PLAIN_BPM));
  const tempi = stretches.map((stretch) => tempoOf(stretch, quartersABeat));
  const toTick = (timeSec: number): number => tickAt(tempi, timeSec);
  const head = [
    text('trackName', title),
    ...(music === null ? [] : musicEvents(music)),
    ...tempoEvents(tempi),
  ];
  const all = notes.map((note) => ({ note, events: timedEvents(note, notes, toTick) }));
  if (music === null)
    return file(0, [
      track(
        head,
        all.flatMap(({ events }) => events),
      ),
    ]);
  const [firstHand] = music.hands;
  const tracks = music.hands.map(({ hand, name }) => {
    const own = all.filter(({ note }) => (note.hand ?? firstHand?.hand) === hand);
    const named = { tick: 0, event: text('trackName', name).event };
    return track(
      [named],
      own.flatMap(({ events }) => events),
    );
  });
  return file(1, [track(head, []), ...tracks]);
}

/** Report → what was played, with its tempo and bars, and each hand on a track of its own. */
export function playedMidi(
  report: Report,
  exercise: Exercise,
  names: { readonly title: string; readonly hands: Readonly<Record<Hand, string>> },
): Uint8Array<ArrayBuffer> {
  const { tempoBpm } = report.measures;
  const { hands, key } = exercise.choice;
  return encodeMidi(report.notes, {
    title: names.title,
    music: {
      beats: beatsStruck(report, exercise),
      tempoBpm: 'value' in tempoBpm ? tempoBpm.value : (report.targetBpm ?? PLAIN_BPM),
      dotted: isDotted(exercise.choice),
      key,
      hands: (hands === 'together' ? (['right', 'left'] as const) : [hands]).map((hand) => ({
        hand,
        name: names.hands[hand],
      })),
    },
  });
}

interface TimedEvent {
  readonly tick: number;
  readonly event: MidiEvent;
}

interface Tempo {
  readonly tick: number;
  readonly timeSec: number;
  readonly microsecondsPerBeat: number;
}

function tempoOf({ beat, timeSec, beatSec }: Stretch, quartersABeat: number): Tempo {
  const microseconds = Math.round((beatSec / quartersABeat) * 1e6);
  return {
    tick: Math.round(beat * quartersABeat * TICKS_A_QUARTER),
    timeSec,
    // 24 bits (Standard MIDI Files 1.0, "Set Tempo").
    microsecondsPerBeat: Math.min(0xffffff, Math.max(1, microseconds)),
  };
}

function tickAt(tempi: readonly Tempo[], timeSec: number): number {
  const tempo = tempi.findLast((one) => one.timeSec <= timeSec) ?? tempi[0]!;
  const ticks = ((timeSec - tempo.timeSec) * 1e6 * TICKS_A_QUARTER) / tempo.microsecondsPerBeat;
  return Math.max(0, tempo.tick + Math.round(ticks));
}

function tempoEvents(tempi: readonly Tempo[]): readonly TimedEvent[] {
  return tempi.map(({ tick, microsecondsPerBeat }) => ({
    tick,
    event: { deltaTime: 0, meta: true, type: 'setTempo', microsecondsPerBeat },
  }));
}

/** Four beats a bar, as 4/4 or 12/8, and the key. */
function musicEvents({ dotted, key }: MidiMusic): readonly TimedEvent[] {
  const { signature, accidental, mode } = keyFacts(key);
  const bars = {
    ...{ numerator: dotted ? 12 : 4, denominator: dotted ? 8 : 4 },
    ...{ metronome: dotted ? 36 : 24, thirtyseconds: 8 },
  };
  const sign = {
    key: accidental === 'flats' ? -signature.length : signature.length,
    scale: mode === 'minor' ? 1 : 0,
  };
  return [
    { tick: 0, event: { deltaTime: 0, meta: true, type: 'timeSignature', ...bars } },
    { tick: 0, event: { deltaTime: 0, meta: true, type: 'keySignature', ...sign } },
  ];
}

/** The library writes one byte a letter: these are the bytes of UTF-8. */
function text(type: 'trackName', words: string): TimedEvent {
  const bytes = String.fromCharCode(...new TextEncoder().encode(words));
  return { tick: 0, event: { deltaTime: 0, meta: true, type, text: bytes } };
}

function timedEvents(
  note: MidiNote,
  notes: readonly MidiNote[],
  toTick: (timeSec: number) => number,
): readonly TimedEvent[] {
  const middleDb = middle(notes.map(({ levelDb }) => levelDb));
  const velocity = Math.round(MIDDLE_VELOCITY + VELOCITY_A_DB * (note.levelDb - middleDb));
  const at = { channel: 0, noteNumber: note.midi, deltaTime: 0 };
  return [
    {
      tick: toTick(note.timeSec),
      event: { ...at, type: 'noteOn', velocity: Math.min(127, Math.max(1, velocity)) },
    },
    { tick: toTick(endSec(note, notes)), event: { ...at, type: 'noteOff', velocity: 64 } },
  ];
}

function track(head: readonly TimedEvent[], notes: readonly TimedEvent[]): MidiEvent[] {
  // At one time a key goes up before it goes down again.
  const inOrder = [...head, ...notes].sort(
    (a, b) => a.tick - b.tick || Number(a.event.type === 'noteOn') - Number(b.event.type === 'noteOn'),
  );
  const events = inOrder.map(({ tick, event }, at) => ({
    ...event,
    deltaTime: tick - (inOrder[at - 1]?.tick ?? 0),
  }));
  return [...events, { deltaTime: 0, meta: true, type: 'endOfTrack' }];
}

function file(format: 0 | 1, tracks: MidiEvent[][]): Uint8Array<ArrayBuffer> {
  const header = { format, numTracks: tracks.length, ticksPerBeat: TICKS_A_QUARTER };
  return Uint8Array.from(writeMidi({ header, tracks }));
}

function endSec(note: MidiNote, notes: readonly MidiNote[]): number {
  const again = Math.min(
    ...notes
      .filter(({ midi, timeSec }) => midi === note.midi && timeSec > note.timeSec)
      .map(({ timeSec }) => timeSec),
    Infinity,
  );
  const said = note.releaseSec ?? note.timeSec + LONGEST_UNKNOWN_SEC;
  return Math.min(Math.max(said, note.timeSec + SHORTEST_SEC), again);
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
