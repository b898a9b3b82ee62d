export type { Glance, Look, Question, BlindBelief, Usual } from './types.ts';
export { COMPARED_LEVELS } from './twins.ts';
export type { HandsApart } from './twins.ts';
import { RATE_HZ } from '../../listen/audio/index.ts';
import { decodeBase64 } from '../../base/base64.ts';
import { decodeFloat16 } from '../../listen/network/bytes.ts';
import { UsageError } from '../../base/errors.ts';
import { dense, denseRows, framesFirst, halveFrames, LayerDesk } from './layers.ts';
import type { Layer } from './layers.ts';
import { FAR_SEC, TOLD_INPUTS, toldInputs, WRITTEN_INPUTS, writtenInputs } from './question.ts';
import { STRIPS } from './strips.ts';
import { addedBeside, COMPARED_LEVELS, levelsOf, LONG, MIDDLE_WANTED } from './twins.ts';
import type { Comparing, HandsApart } from './twins.ts';
import type { Glance, Look, PackedLook, Place, Question } from './types.ts';
import { HELD, heldFrames, lookThrough, VIEWS } from './views.ts';
import { TRAINED_LOOK } from './weights.ts';
import { Lenses } from './windows.ts';

/** views of which every second frame goes into the joint layer, three seen together; of the others all as they are */
const HALVED = [1, 2];
const joinedFrames = VIEWS.reduce(
  (sum, { frames }, view) => sum + (HALVED.includes(view) ? Math.floor((frames - 3) / 2) + 1 : frames),
  0,
);
/** the network counts moments in units of 10 ms */
const UNIT_SEC = 0.01;
/** its spread is held between e^−3 and e^3 of them */
const MOST_LOG_SPREAD = 3;

/** Looks at one key at a time, and at what it saw again beside what it saw of the key's twins and knows of hands apart. */
export interface CloserLook {
  once(question: Question): Glance;
  beside(own: Glance, twins: readonly Glance[], apart: HandsApart): Look;
  /** Levels of a key's strips while it would sound, COMPARED_LEVELS of them: what hands apart are compared by. */
  levelsAt(place: Place): Float32Array;
}

interface Layers extends Comparing {
  readonly mixed: readonly Layer[];
  readonly channels: readonly Layer[];
  readonly halved: readonly Layer[];
  readonly seen: Layer;
  readonly written: Layer;
  readonly told: Layer;
  readonly joined: Layer;
  readonly last: Layer;
  readonly out: Layer;
}

/** Opened with the first look and shared by those that follow: an attempt takes seconds, and they would be made anew for each. */
let opened: { readonly layers: Layers; readonly lenses: Lenses } | undefined;

/**
 * Opens the closer look: a small trained network that is asked about one key at one moment and sees the sound there far finer
 * than the blind ear does, at the partials of that key and of its relatives, and is told what is written and what the blind ear
 * said. Training, data and figures: `src/training`. `samples`: one channel at RATE_HZ.
 */
export function createLook(samples: Float32Array): CloserLook {
  const { sizes } = TRAINED_LOOK;
  const { layers, lenses } = (opened ??= { layers: unpack(TRAINED_LOOK), lenses: new Lenses() });
  const answer = (last: Float32Array, timeSec: number, belief: number, moment: number): Look => {
    const out = dense(
      layers.out,
      last.map((value) => Math.max(0, value)),
      true,
    );
    const logSpread = Math.min(Math.max(out[2]!, -MOST_LOG_SPREAD), MOST_LOG_SPREAD);
    // What the blind ear said stands unless the look says otherwise.
    return {
      logOdds: out[0]! + belief,
      timeSec: timeSec + (out[1]! + moment) * UNIT_SEC,
      spreadSec: Math.exp(logSpread) * UNIT_SEC,
    };
  };
  const seenAt = ({ midi, cents, timeSec, gain }: Place) => {
    const { sums, room, windows } = lenses.of(midi, cents);
    const centre = Math.round(timeSec * RATE_HZ);
    return (view: number, wanted?: { readonly from: number; readonly to: number }): Float32Array =>
      lookThrough(sums, room, VIEWS[view]!, samples, centre, gain, windows[view]!, wanted);
  };
  const once = (question: Question): Glance => {
    const see = seenAt(question);
    const read = new Float32Array(joinedFrames * sizes.channels);
    const held = { from: 0, to: heldFrames(question.after?.untilSec ?? FAR_SEC) };
    let at = 0;
    const views = VIEWS.map((_, index) => {
      const levels = see(index, index === HELD ? held : undefined);
      const mixed = denseRows(layers.mixed[index]!, levels);
      const rows = denseRows(layers.channels[index]!, mixed);
      const kept = HALVED.includes(index)
        ? halveFrames(layers.halved[index - 1]!, rows, sizes.channels)
        : rows;
      read.set(kept, at);
      at += kept.length;
      return levels;
    });
    const said = toldInputs(question);
    const seen = dense(layers.seen, read);
    const told = dense(layers.told, said);
    const written = dense(layers.written, writtenInputs(question));
    const joined = new Float32Array(seen.length + written.length + told.length);
    joined.set(seen);
    joined.set(written, seen.length);
    joined.set(told, seen.length + written.length);
    const last = dense(layers.last, dense(layers.joined, joined), true);
    const [belief, moment] = [said[0]!, said[1]!];
    return {
      ...answer(last, question.timeSec, belief, moment),
      glimpse: {
        levels: levelsOf(views[0]!, views[1]!),
        seen,
        told,
        last,
        belief,
        moment,
        centreSec: question.timeSec,
      },
    };
  };
  const beside = (own: Glance, twins: readonly Glance[], apart: HandsApart): Look => {
    const added = addedBeside(layers, own, twins, apart);
    if (added === null) return own;
    const { last, centreSec, belief, moment } = own.glimpse;
    return answer(
      last.map((value, index) => value + added[index]!),
      centreSec,
      belief,
      moment,
    );
  };
  const levelsAt = (place: Place): Float32Array => {
    const see = seenAt(place);
    return levelsOf(see(0, LONG), see(1, MIDDLE_WANTED));
  };
  return { once, beside, levelsAt };
}

function unpack({ sizes, float16Base64 }: PackedLook): Layers {
  const all = decodeFloat16(decodeBase64(float16Base64));
  let at = 0;
  const take = (count: number): Float32Array => all.subarray(at, (at += count));
  const { mixed, channels, seen, written, told, joined, last, compared, compressed } = sizes;
  const most = Math.max(...VIEWS.map(({ frames }) => frames * mixed), joinedFrames * channels);
  const comparedInputs = seen + 2 * told + 4 * COMPARED_LEVELS + 4;
  const desk = new LayerDesk(Math.max(most, comparedInputs));
  const layer = (outputs: number, inputs: number): Layer => desk.place(take(outputs * inputs), take(outputs));
  const layers: Layers = {
    mixed: VIEWS.map(() => layer(mixed, STRIPS)),
    channels: VIEWS.map(() => layer(channels, mixed)),
    halved: HALVED.map(() =>
      desk.place(framesFirst(take(channels * 3 * channels), channels), take(channels)),
    ),
    seen: layer(seen, joinedFrames * channels),
    written: layer(written, WRITTEN_INPUTS),
    told: layer(told, TOLD_INPUTS),
    joined: layer(joined, seen + written + told),
    last: layer(last, joined),
    out: layer(3, last),
    compared: layer(compared, comparedInputs),
    compressed: layer(compressed, compared),
    // It adds to a layer that has a bias.
    added: desk.place(take(last * compressed), new Float32Array(last)),
  };
  if (at !== all.length)
    throw new UsageError(
      `float16Base64 holds ${all.length} weights where its sizes ask for ${at}; export it anew`,
    );
  return layers;
}
