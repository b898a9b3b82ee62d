export type { Glance, Look, Question, BlindBelief, Usual } from './types.ts';
export { logOdds } from './question.ts';
import { RATE_HZ } from '../../listen/audio/index.ts';
import { decodeBase64, decodeFloat16 } from '../../listen/network/bytes.ts';
import { UsageError } from '../../base/errors.ts';
import { dense, denseRows, halveFrames } from './layers.ts';
import type { Layer } from './layers.ts';
import { TOLD_INPUTS, toldInputs, WRITTEN_INPUTS, writtenInputs } from './question.ts';
import { STRIPS } from './strips.ts';
import { addedByTwins, COMPARED_LEVELS, levelsOf } from './twins.ts';
import type { Comparing } from './twins.ts';
import type { Glance, Look, PackedLook, Question } from './types.ts';
import { lookThrough, VIEWS } from './views.ts';
import { TRAINED_LOOK } from './weights.ts';
import { Lenses } from './windows.ts';

/** frames of a view that go into the joint layer: the long view's as they are, of the others every second */
const joinedFrames = VIEWS.reduce(
  (sum, { frames }, view) => sum + (view === 0 ? frames : Math.floor((frames - 3) / 2) + 1),
  0,
);
/** the network counts moments in units of 10 ms */
const UNIT_SEC = 0.01;
/** its spread is held between e^−3 and e^3 of them */
const MOST_LOG_SPREAD = 3;

/** Looks at one key at a time, and at what it saw again beside what it saw of the key's twins. */
export interface CloserLook {
  once(question: Question): Glance;
  besideTwins(own: Glance, twins: readonly Glance[]): Look;
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
 * said. Training, data and figures: `training/README.md`. `samples`: one channel at RATE_HZ.
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
  const once = (question: Question): Glance => {
    const { projector, room, windows } = lenses.of(question.midi, question.cents);
    const centre = Math.round(question.timeSec * RATE_HZ);
    const read = new Float32Array(joinedFrames * sizes.channels);
    let at = 0;
    const views = VIEWS.map((view, index) => {
      const levels = lookThrough(projector, room, view, samples, centre, question.gain, windows[index]!);
      const mixed = denseRows(layers.mixed[index]!, levels, STRIPS);
      const rows = denseRows(layers.channels[index]!, mixed, sizes.mixed);
      const kept = index === 0 ? rows : halveFrames(layers.halved[index - 1]!, rows, sizes.channels);
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
  const besideTwins = (own: Glance, twins: readonly Glance[]): Look => {
    if (twins.length === 0) return own;
    const added = addedByTwins(layers, own, twins);
    const { last, centreSec, belief, moment } = own.glimpse;
    return answer(
      last.map((value, index) => value + added[index]!),
      centreSec,
      belief,
      moment,
    );
  };
  return { once, besideTwins };
}

function unpack({ sizes, float16Base64 }: PackedLook): Layers {
  const all = decodeFloat16(decodeBase64(float16Base64));
  let at = 0;
  const take = (count: number): Float32Array => all.subarray(at, (at += count));
  const layer = (outputs: number, inputs: number): Layer => ({
    weights: take(outputs * inputs),
    bias: take(outputs),
  });
  const { mixed, channels, seen, written, told, joined, last, compared, compressed } = sizes;
  const layers: Layers = {
    mixed: VIEWS.map(() => layer(mixed, STRIPS)),
    channels: VIEWS.map(() => layer(channels, mixed)),
    halved: VIEWS.slice(1).map(() => layer(channels, 3 * channels)),
    seen: layer(seen, joinedFrames * channels),
    written: layer(written, WRITTEN_INPUTS),
    told: layer(told, TOLD_INPUTS),
    joined: layer(joined, seen + written + told),
    last: layer(last, joined),
    out: layer(3, last),
    compared: layer(compared, seen + 2 * told + 2 * COMPARED_LEVELS + 1),
    compressed: layer(compressed, compared),
    // It adds to a layer that has a bias.
    added: { weights: take(last * compressed), bias: new Float32Array(last) },
  };
  if (at !== all.length)
    throw new UsageError(
      `float16Base64 holds ${all.length} weights where its sizes ask for ${at}; export it anew`,
    );
  return layers;
}
