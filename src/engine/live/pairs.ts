import type { NetworkNote } from '../listen/network/index.ts';

/** struck so near to each other two keys are one moment, seconds */
const TOGETHER_SEC = 0.05;
const OCTAVES = [12, 24, 36];
/** Both hands play where more than such a share of so many notes, the last ones, were pairs */
const LATEST = 12;
const SHARE = 0.4;
/** The network believes in the other one more than so much. Our bench, development piano: half of it draws 1 in 200 more, and a fifth more that nobody struck. */
const LEAST_PROBABILITY = 0.1;
/** … where the other hand has just been; on its far side it counts for so much less, being mostly a partial */
const FAR_SIDE = 0.35;
/** likely notes are remembered so long, seconds */
const REMEMBERED_SEC = 1;

type Struck = Pick<NetworkNote, 'timeSec' | 'midi'>;

/**
 * Hands octaves apart. The upper of two keys hides among the lower one's partials, a soft lower one under the upper, so that by
 * itself it is not likely to have been struck. Where most of what was played of late were such pairs, a likely note is taken to have its
 * other one. What is written has no say.
 */
export class Pairs {
  /** within a second */
  #likely: readonly Struck[] = [];
  /** however long ago: hands are put together for more than one attempt */
  #latest: readonly Struck[] = [];

  /** What has been heard out, in order of time; talk is no playing. */
  played(notes: readonly Struck[]): void {
    this.#latest = [...this.#latest, ...notes].slice(-LATEST);
  }

  /** Of `doubtful` the other one of each likely note that lacks it: of the keys octaves away the one that is believed in most. */
  others(likely: readonly Struck[], doubtful: readonly NetworkNote[]): NetworkNote[] {
    const known = [...this.#likely, ...likely];
    const sinceSec = Math.max(0, ...known.map(({ timeSec }) => timeSec)) - REMEMBERED_SEC;
    this.#likely = known.filter(({ timeSec }) => timeSec > sinceSec);
    const paired = pairedIn(this.#latest).filter((note) => !isInOneHand(note, this.#latest)).length;
    if (doubtful.length === 0 || paired <= SHARE * this.#latest.length) return [];
    const alone = this.#likely.filter((one) => !this.#likely.some((other) => isPair(one, other)));
    return [...new Set(alone.flatMap((one) => this.#otherOf(one, doubtful)))];
  }

  #otherOf(one: Struck, doubtful: readonly NetworkNote[]): NetworkNote[] {
    const betweenHands = this.#betweenHands(one.timeSec);
    const belief = ({ midi, probability }: NetworkNote): number =>
      betweenHands === null || midi < one.midi === betweenHands < one.midi
        ? probability
        : FAR_SIDE * probability;
    return doubtful
      .filter((note) => isPair(one, note) && belief(note) > LEAST_PROBABILITY)
      .sort((a, b) => belief(b) - belief(a))
      .slice(0, 1);
  }

  /** The middle of the last pairs before, as a key; null: there are none. */
  #betweenHands(sec: number): number | null {
    const paired = pairedIn(
      [...this.#latest, ...this.#likely].filter(({ timeSec }) => timeSec < sec - TOGETHER_SEC),
    );
    const lastSec = Math.max(...paired.map(({ timeSec }) => timeSec));
    const last = paired.filter(({ timeSec }) => timeSec > lastSec - TOGETHER_SEC);
    return last.length === 0 ? null : last.reduce((sum, { midi }) => sum + midi, 0) / last.length;
  }
}

function pairedIn(notes: readonly Struck[]): readonly Struck[] {
  return notes.filter((note) => notes.some((other) => isPair(note, other)));
}

/** A chord of three or more within an octave is one hand's, although its outer keys are a pair. */
function isInOneHand(note: Struck, among: readonly Struck[]): boolean {
  const chord = among.filter((other) => isOneMoment(note, other)).map(({ midi }) => midi);
  return chord.length > 2 && Math.max(...chord) - Math.min(...chord) <= OCTAVES[0]!;
}

export function isOneMoment(note: Pick<Struck, 'timeSec'>, other: Pick<Struck, 'timeSec'>): boolean {
  return Math.abs(note.timeSec - other.timeSec) < TOGETHER_SEC;
}

function isPair(note: Struck, other: Struck): boolean {
  return OCTAVES.includes(Math.abs(note.midi - other.midi)) && isOneMoment(note, other);
}
