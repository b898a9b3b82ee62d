import { mean } from '../base/statistics.ts';
import type { Hand } from '../exercise/index.ts';
import { nameOfLook, readLook, writeLook } from '../listen/piano/index.ts';
import type { AloneLook, HandsAlone, Heard, KeptSound } from '../listen/index.ts';
import { stretchCents } from '../listen/transcribe/stretch.ts';
import type { Alignment } from '../match/index.ts';
import { COMPARED_LEVELS, createLook } from './look/index.ts';
import { stepsHeard } from './steps.ts';

/** Both hands play the same an octave apart: of one hand alone the keys are looked at that the other would strike. */
const OTHER_HAND: Readonly<Record<Hand, number>> = { left: 12, right: -12 };
/** notes of a step lie within so much of its middle, s, or it shows no chord */
const NEAR_SEC = 0.06;
/**
 * An attempt of one hand → what its steps sounded like: at the keys that were struck and at those an octave away that the other
 * hand would strike with them. Empty for both hands.
 */
export function handsAloneIn(heard: Heard, alignment: Alignment, sound: KeptSound): HandsAlone {
  const { hands } = alignment.exercise.choice;
  if (hands === 'together') return {};
  const look = createLook(sound.samples);
  const seen = new Map<string, Float32Array[]>();
  for (const { written, timeSec, notes } of stepsHeard(heard, alignment)) {
    if (timeSec === null) continue;
    if (notes.some((note) => note.timeSec === null || Math.abs(note.timeSec - timeSec) > NEAR_SEC)) continue;
    for (const midi of written.flatMap((key) => [key, key + OTHER_HAND[hands]])) {
      const name = nameOfLook(written, midi);
      const cents = heard.tuning.cents + stretchCents(midi);
      const levels = look.levelsAt({ midi, timeSec, cents, gain: sound.gainAt(timeSec) });
      seen.set(name, [...(seen.get(name) ?? []), levels]);
    }
  }
  return Object.fromEntries([...seen].map(([name, looks]) => [name, [writeLook(meanOf(looks))]]));
}

/** What is known of hands alone, to be asked for by the keys struck. */
export class KnownAlone {
  readonly #alone: HandsAlone;
  readonly #read = new Map<string, Float32Array | null>();

  constructor(alone: HandsAlone) {
    this.#alone = alone;
  }

  /** Levels at a key while these keys, and no others, were struck; null: never heard. */
  at(struck: readonly number[], midi: number): Float32Array | null {
    if (struck.length === 0) return null;
    const name = nameOfLook(struck, midi);
    const known = this.#read.get(name);
    if (known !== undefined) return known;
    const looks: readonly AloneLook[] = this.#alone[name] ?? [];
    const levels = looks.length === 0 ? null : meanOf(looks.map(readLook));
    this.#read.set(name, levels);
    return levels;
  }
}

function meanOf(looks: readonly Float32Array[]): Float32Array {
  return Float32Array.from({ length: COMPARED_LEVELS }, (_, at) => mean(looks.map((levels) => levels[at]!))!);
}
