import { learnPiano, listen } from '../listen/index.ts';
import type { AudioInput, PianoProfile, PlayedNote } from '../listen/index.ts';
import { LoudnessWatch, RATE_HZ, SampleHistory, createAudioStream } from '../listen/audio/index.ts';
import { HumWatch } from '../listen/hum.ts';
import type { HumFacts } from '../listen/hum.ts';

/** The room while nobody plays. */
export interface Silence {
  /**
   * level that most moments stay below, dB (full-scale sine = 0); null: no room is so still, the device gives nothing at all while it
   * hears nothing loud
   */
  readonly noiseDb: number | null;
  readonly hum: HumFacts | null;
}

/** What is wrong with the place, with its figures; the page says it, and what to change. */
export type RoomFinding =
  | { readonly kind: 'no-notes'; readonly heard: number }
  | { readonly kind: 'clipping' | 'soft' }
  /** `far`: the piano arrives softly; `noise`: the room is loud */
  | { readonly kind: 'noise' | 'far'; readonly aboveDb: number }
  | { readonly kind: 'hum'; readonly mainsHz: number };

export interface RoomCheck {
  readonly silence: Silence;
  /** the notes heard, and how far each stands above the room, dB; null where that was not to be heard */
  readonly notes: readonly (PlayedNote & { readonly aboveNoiseDb: number | null })[];
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

/** Converters of 16 bits have a noise of −98 dB by themselves (closed form: 6.02 · 16 + 1.76); a microphone's own is louder. */
const STILLEST_DB = -98;
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
  const noiseDb = loudness.quantileDb(0.75);
  return { noiseDb: noiseDb < STILLEST_DB ? null : noiseDb, hum: hum.facts() };
}

/** The room's silence, and a low, a middle and a high note played in it → is this a good place, and what piano is it. */
export function checkRoom(silence: Silence, played: AudioInput): RoomCheck {
  const heard = listen(played);
  const { noiseDb } = silence;
  const notes = heard.notes.map((note) => ({
    ...note,
    aboveNoiseDb: noiseDb === null ? null : note.levelDb - noiseDb,
  }));
  const findings: RoomFinding[] = [];
  const say = (finding: RoomFinding): void => void findings.push(finding);
  const softest = notes.reduce((least, note) => (note.levelDb < least.levelDb ? note : least), notes[0]!);

  if (notes.length < ROOM_BOUNDS.leastNotes) say({ kind: 'no-notes', heard: notes.length });
  if (heard.findings.some(({ kind }) => kind === 'clipping')) say({ kind: 'clipping' });
  if (notes.length > 0) {
    const isSoft = softest.levelDb < ROOM_BOUNDS.softDb;
    const { aboveNoiseDb: aboveDb } = softest;
    if (aboveDb !== null && aboveDb < ROOM_BOUNDS.leastAboveDb)
      say({ kind: isSoft ? 'far' : 'noise', aboveDb });
    else if (isSoft) say({ kind: 'soft' });
    const { hum } = silence;
    if (hum !== null && hum.levelDb > softest.levelDb - ROOM_BOUNDS.humBelowDb)
      say({ kind: 'hum', mainsHz: hum.mainsHz });
  }
  return { silence, notes, findings, piano: learnPiano(heard) };
}
