import { learnPiano, listen } from '../listen/index.ts';
import type { AudioInput, PianoProfile, PlayedNote } from '../listen/index.ts';
import { HumWatch, LoudnessWatch, RATE_HZ, SampleHistory, createAudioStream } from '../listen/audio/index.ts';
import type { HumFacts } from '../listen/audio/index.ts';

/** The room while nobody plays. */
export interface Silence {
  /** level that most moments stay below, dB (full-scale sine = 0) */
  readonly noiseDb: number;
  readonly hum: HumFacts | null;
}

export type RoomFindingKind = 'no-notes' | 'clipping' | 'noise' | 'far' | 'soft' | 'hum';

/** What is wrong with the place, in one plain sentence with what to change. */
export interface RoomFinding {
  readonly kind: RoomFindingKind;
  readonly detail: string;
}

export interface RoomCheck {
  readonly silence: Silence;
  /** the notes heard, and how far each stands above the room, dB */
  readonly notes: readonly (PlayedNote & { readonly aboveNoiseDb: number })[];
  /** the gravest first; empty: all is well */
  readonly findings: readonly RoomFinding[];
  /** null where too little was heard to know it */
  readonly piano: PianoProfile | null;
}

/** Bounds at which the place is worth changing. Noise: the bench's standard set goes down to 25 dB; the rest common practice. */
export const ROOM_BOUNDS = {
  /** below this above the noise, soft notes are lost */
  leastAboveDb: 25,
  /** the note's own level below which a phone's own noise comes near */
  softDb: -50,
  /** hum may come so near to the softest note */
  humBelowDb: 30,
  clippedRuns: 1,
  leastNotes: 3,
} as const;

/** seconds at the edges of the silence in which a touch on the device may sound */
const EDGE_SEC = 0.3;

/** Three seconds in which nobody plays → how loud the room is by itself. */
export function measureSilence({ channels, sampleRateHz }: AudioInput): Silence {
  const edge = Math.min(Math.round(EDGE_SEC * sampleRateHz), Math.floor((channels[0]?.length ?? 0) / 4));
  const history = new SampleHistory(8 * RATE_HZ);
  const hum = new HumWatch(history, 2);
  const loudness = new LoudnessWatch();
  const audio = createAudioStream({ sampleRateHz, channels: channels.length }, (block, length) => {
    history.append(block, 0, length);
    hum.advance();
    loudness.push(block, length);
  });
  audio.push(channels.map((channel) => channel.subarray(edge, channel.length - edge)));
  audio.finish();
  return { noiseDb: loudness.quantileDb(0.75), hum: hum.facts() };
}

/** The room's silence, and a low, a middle and a high note played in it → is this a good place, and what piano is it. */
export function checkRoom(silence: Silence, played: AudioInput): RoomCheck {
  const heard = listen(played);
  const notes = heard.notes.map((note) => ({ ...note, aboveNoiseDb: note.levelDb - silence.noiseDb }));
  const findings: RoomFinding[] = [];
  const say = (kind: RoomFindingKind, detail: string): void => void findings.push({ kind, detail });
  const softest = notes.reduce(
    (least, note) => (note.aboveNoiseDb < least.aboveNoiseDb ? note : least),
    notes[0]!,
  );
  const aboveDb = Math.round(softest?.aboveNoiseDb ?? 0)
    .toString()
    .replace('-', '−');
  const clipping = heard.findings.find(({ kind }) => kind === 'clipping');

  if (notes.length < ROOM_BOUNDS.leastNotes)
    say(
      'no-notes',
      notes.length === 0
        ? 'No note was heard; put the device nearer to the piano and play them again, a little louder.'
        : `Only ${notes.length} of three notes ${notes.length === 1 ? 'was' : 'were'} heard; put the device nearer to the piano and play them again, a little louder.`,
    );
  if (clipping !== undefined)
    say('clipping', 'The piano is too loud for the microphone; put the device further away.');
  if (notes.length > 0 && softest.aboveNoiseDb < ROOM_BOUNDS.leastAboveDb)
    say(
      softest.levelDb < ROOM_BOUNDS.softDb ? 'far' : 'noise',
      softest.levelDb < ROOM_BOUNDS.softDb
        ? `The piano stands only ${aboveDb} dB above the room; put the device nearer to it.`
        : `The room is loud: the piano stands only ${aboveDb} dB above it; close windows and doors, or turn off what hums.`,
    );
  else if (notes.length > 0 && softest.levelDb < ROOM_BOUNDS.softDb)
    say('soft', 'The piano arrives very softly; put the device nearer to it.');
  if (
    silence.hum !== null &&
    notes.length > 0 &&
    silence.hum.levelDb > softest.levelDb - ROOM_BOUNDS.humBelowDb
  )
    say(
      'hum',
      `Mains hum at ${silence.hum.mainsHz} Hz is near; move the device away from chargers and cables.`,
    );
  return { silence, notes, findings, piano: learnPiano(heard) };
}
