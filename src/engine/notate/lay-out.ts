import { median } from '../base/statistics.ts';
import { keyFacts, PASSAGE_MOST } from '../exercise/index.ts';
import type { ExerciseChoice, Hands, OwnPassage, WrittenNote } from '../exercise/index.ts';
import type { PlayedNote } from '../listen/index.ts';
import { spellWithOctave } from '../report/index.ts';
import { splitHands } from './hands.ts';
import { likelyKey } from './key.ts';
import { beatsOf } from './pulse.ts';

export interface LayOutOptions {
  readonly title: string;
  /** about how fast it was played, quarter notes a minute; null: its rhythm is left free, and each moment is a quarter note */
  readonly bpm: number | null;
  readonly time: Pick<OwnPassage['bars'][number], 'count' | 'unit'>;
  /** who played; `together`: it is split by register and line */
  readonly hands: Hands;
}
export const LAY_OUT_DEFAULTS: LayOutOptions = {
  title: '',
  bpm: 50,
  time: { count: 4, unit: 4 },
  hands: 'together',
};

/** A passage laid on a staff, and how many of the notes lie beyond the most that one may hold. */
export interface LaidOut {
  readonly choice: ExerciseChoice;
  readonly beyond: number;
}

/** What begins within this is one chord, seconds: at a slow tempo a thirty-second note lasts longer. */
const TOGETHER_SEC = 0.11;
const FEWEST_MOMENTS = 2;
/** A tone let go within this share of the way to the next, and a beat before it, leaves a rest: less is touch, not writing. */
const LEAVES_REST = 0.5;
const REST_BEATS = 1;
const HALF_BEAT = 0.5;

/**
 * Notes heard, in order of time → the passage that they are, written out: chords and rhythm by the pulse, hands, key and spelling. All of it
 * is a reading, to be set right by whoever played. Null where there is no passage in them: fewer than two moments.
 */
export function layOut(
  notes: readonly Pick<PlayedNote, 'timeSec' | 'midi' | 'releaseSec'>[],
  options: Partial<LayOutOptions> = {},
): LaidOut | null {
  const { title, bpm, time, hands } = { ...LAY_OUT_DEFAULTS, ...options };
  const all = momentsOf(notes);
  const onBeats =
    bpm === null
      ? all.map((_, at) => at)
      : beatsOf(
          all.map(({ timeSec }) => timeSec),
          bpm,
        );
  const barBeats = (4 * time.count) / time.unit;
  const most = PASSAGE_MOST.bars * barBeats;
  const moments = all.filter((_, at) => onBeats[at]! < most);
  if (moments.length < FEWEST_MOMENTS) return null;
  const beats = onBeats.slice(0, moments.length);
  const endBeat = Math.min(most, barBeats * (Math.floor(beats.at(-1)! / barBeats + 1e-6) + 1));
  const keys = moments.flatMap(({ keys }, moment) =>
    keys.map((key) => ({ ...key, moment, at: beats[moment]! })),
  );
  const whose = hands === 'together' ? splitHands(keys, 1e-6) : keys.map(() => hands);
  const spans = keys.map(({ moment }, index): number => {
    const hand = whose[index]!;
    const next = keys.find((key, other) => key.moment > moment && whose[other] === hand)?.moment;
    if (next === undefined) return endBeat - beats[moment]!;
    const own = keys.filter((key, other) => key.moment === moment && whose[other] === hand);
    const untilSec = moments[next]!.timeSec - moments[moment]!.timeSec;
    return writtenBeats(beats[next]! - beats[moment]!, heldSec(own, moments[moment]!.timeSec), untilSec);
  });
  const key = likelyKey(keys.map(({ midi }, index) => ({ midi, weight: spans[index]! })));
  const facts = keyFacts(key);
  const written = keys.map(({ midi, at }, index): WrittenNote => ({
    name: spellWithOctave(facts, midi),
    hand: whose[index]!,
    beat: rounded(at),
    beats: rounded(spans[index]!),
  }));
  const bars = Array.from({ length: Math.round(endBeat / barBeats) }, () => ({ beats: barBeats, ...time }));
  const passage: OwnPassage = { title: title.slice(0, PASSAGE_MOST.titleLetters), bars, notes: written };
  const own = new Set(whose);
  const choice: ExerciseChoice = {
    key,
    form: 'passage',
    hands: own.size > 1 ? 'together' : whose[0]!,
    octaves: 1,
    passage,
  };
  return { choice, beyond: all.slice(moments.length).reduce((sum, { keys }) => sum + keys.length, 0) };
}

/** What was struck at once. */
interface Moment {
  readonly timeSec: number;
  readonly keys: readonly { readonly midi: number; readonly releaseSec: number | null }[];
}

function momentsOf(notes: readonly Pick<PlayedNote, 'timeSec' | 'midi' | 'releaseSec'>[]): readonly Moment[] {
  const moments: { fromSec: number; notes: (typeof notes)[number][] }[] = [];
  for (const note of notes) {
    const last = moments.at(-1);
    const isWithLast =
      last !== undefined &&
      note.timeSec - last.fromSec <= TOGETHER_SEC &&
      last.notes.length < PASSAGE_MOST.keysAtOnce &&
      last.notes.every(({ midi }) => midi !== note.midi);
    if (isWithLast) last.notes.push(note);
    else moments.push({ fromSec: note.timeSec, notes: [note] });
  }
  return moments.map(({ notes }) => ({
    timeSec: median(notes.map(({ timeSec }) => timeSec))!,
    keys: [...notes].sort((a, b) => a.midi - b.midi),
  }));
}

/** How long the longest of them is held; null: it cannot be heard. */
function heldSec(keys: readonly { readonly releaseSec: number | null }[], fromSec: number): number | null {
  const releases = keys.map(({ releaseSec }) => releaseSec);
  return releases.includes(null) ? null : Math.max(...releases.map((sec) => sec! - fromSec));
}

/** As long as until the hand strikes again, but for where it was silent long before. */
function writtenBeats(span: number, held: number | null, untilSec: number): number {
  if (held === null) return span;
  const share = held / untilSec;
  const beats = Math.max(HALF_BEAT, Math.ceil((share * span) / HALF_BEAT - 1e-6) * HALF_BEAT);
  return share <= LEAVES_REST && span - beats >= REST_BEATS ? beats : span;
}

const rounded = (beats: number): number => Math.round(beats * 1e4) / 1e4;
