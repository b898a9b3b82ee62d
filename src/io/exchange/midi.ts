import { writeMidi } from 'midi-file';
import type { MidiEvent } from 'midi-file';

/** What a MIDI file needs of a note. */
export interface MidiNote {
  readonly timeSec: number;
  /** null: not known; then it lasts until the key is struck again, at most a second */
  readonly releaseSec: number | null;
  readonly midi: number;
  readonly levelDb: number;
}

export interface MidiOptions {
  /** name of the track */
  readonly title: string;
}
const MIDI_DEFAULTS: MidiOptions = { title: 'Heard notes' };

/**
 * 19 200 ticks a quarter at 120 quarters a minute: a tick is 26 µs. The division is a 15-bit number (Standard MIDI Files
 * 1.0, "header chunks"), 32 767 at most.
 */
const TICKS_A_QUARTER = 19_200;
const MICROSECONDS_A_QUARTER = 500_000;
const TICKS_A_SECOND = (TICKS_A_QUARTER * 1e6) / MICROSECONDS_A_QUARTER;

/** Velocity of the median level, and steps of velocity a dB; common practice, no source: MIDI fixes no loudness. */
const MIDDLE_VELOCITY = 64;
const VELOCITY_A_DB = 2.5;

const LONGEST_UNKNOWN_SEC = 1;
const SHORTEST_SEC = 0.01;

/** Notes → a Standard MIDI File, format 0, with every onset at its time to within 0.02 ms. */
export function encodeMidi(
  notes: readonly MidiNote[],
  options: Partial<MidiOptions> = {},
): Uint8Array<ArrayBuffer> {
  const { title } = { ...MIDI_DEFAULTS, ...options };
  const middleDb = middle(notes.map(({ levelDb }) => levelDb));
  const timed = notes.flatMap((note): readonly TimedEvent[] => {
    const at = { channel: 0, noteNumber: note.midi, deltaTime: 0 };
    const velocity = Math.round(MIDDLE_VELOCITY + VELOCITY_A_DB * (note.levelDb - middleDb));
    return [
      {
        tick: toTick(note.timeSec),
        event: { ...at, type: 'noteOn', velocity: Math.min(127, Math.max(1, velocity)) },
      },
      { tick: toTick(endSec(note, notes)), event: { ...at, type: 'noteOff', velocity: 64 } },
    ];
  });
  // At one time a key goes up before it goes down again.
  timed.sort(
    (a, b) => a.tick - b.tick || Number(a.event.type === 'noteOn') - Number(b.event.type === 'noteOn'),
  );
  const track: MidiEvent[] = [
    { deltaTime: 0, meta: true, type: 'trackName', text: title },
    { deltaTime: 0, meta: true, type: 'setTempo', microsecondsPerBeat: MICROSECONDS_A_QUARTER },
  ];
  let lastTick = 0;
  for (const { tick, event } of timed) {
    track.push({ ...event, deltaTime: tick - lastTick });
    lastTick = tick;
  }
  track.push({ deltaTime: 0, meta: true, type: 'endOfTrack' });
  const header = { format: 0, numTracks: 1, ticksPerBeat: TICKS_A_QUARTER } as const;
  return Uint8Array.from(writeMidi({ header, tracks: [track] }));
}

interface TimedEvent {
  readonly tick: number;
  readonly event: MidiEvent;
}

function toTick(timeSec: number): number {
  return Math.max(0, Math.round(timeSec * TICKS_A_SECOND));
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
