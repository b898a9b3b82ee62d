import { Network } from './network.ts';
import { reachOf } from './parameters.ts';
import type { PackedNetwork, Peaks, SampleSource } from './types.ts';
import { TRAINED_NETWORK } from './weights.ts';

export { ActiveLevel } from './level.ts';
export type { SampleSource } from './types.ts';

/** A key that the network thinks was struck. */
export interface NetworkNote {
  readonly timeSec: number;
  readonly midi: number;
  /** 0..1; a sure note is near 1, and 0.65 parts best (training, on the pianos trained on) */
  readonly probability: number;
  /** level against the middling note of the training's performances, dB */
  readonly levelDb: number;
  /** 0..1: the key sounds a moment after the onset */
  readonly sounding: number;
}

/** What is listened to, and where. */
export interface NetworkTask {
  /** one channel at 22 050 Hz by absolute sample index */
  readonly source: SampleSource;
  /** the piano's tuning against A4 = 440 Hz; rounded to `tuningStepCents` */
  readonly cents: number;
  /** see `ActiveLevel`; rounded to `gainStepDb` */
  readonly gain: number;
  /** keys that may have been struck; give a margin, since a key just outside that was struck would be heard as its neighbour */
  readonly lowMidi: number;
  readonly highMidi: number;
  /** when onsets may lie, in order of time */
  readonly spans: readonly { readonly fromSec: number; readonly toSec: number }[];
}

export interface NetworkOptions {
  /** notes less probable than this are not told */
  readonly leastProbability: number;
  /** a peak is a frame whose onset is at least this likely */
  readonly leastPeak: number;
  /** a key cannot be struck twice within this time */
  readonly refractorySec: number;
  /** time after the peak at which it is asked whether the key sounds; costs look-ahead */
  readonly soundingAfterSec: number;
  readonly tuningStepCents: number;
  readonly gainStepDb: number;
}

/** As in the training's own reading; leastProbability far below its threshold of 0.65. */
export const NETWORK_DEFAULTS: NetworkOptions = {
  leastProbability: 0.1,
  leastPeak: 0.1,
  refractorySec: 0.06,
  soundingAfterSec: 0.046,
  tuningStepCents: 5,
  gainStepDb: 1,
};

export interface NetworkListener {
  /** `wasm`, or `plain` where that is missing: same numbers, many times slower */
  readonly kernel: 'wasm' | 'plain';
  /** seconds of sound before and after a span on which its notes depend: hand over a span when this much has come */
  readonly lookBackSec: number;
  readonly lookAheadSec: number;
  /** products of a weight and a value so far, for benches */
  products(): number;
  /** Notes whose onsets lie in the spans, in order of time, then of key. */
  hear(task: NetworkTask): readonly NetworkNote[];
}

/**
 * Opens a listening by the learned ear: given where onsets may lie, which keys were struck there.
 *
 * How to use it from a stream: keep the last seconds of samples in a `SampleHistory` (a `SampleSource`) and push each sample
 * to an `ActiveLevel` too. When an onset is suspected at t, wait until `lookAheadSec` more has come than the end of its span,
 * then `hear` the span t − 30 … t + 45 ms (a chord may be spread) with the gain of t − 4 s … t + `lookAheadSec`. Spans may
 * overlap and calls may be cut as one likes: what is said of a moment depends only on the task's tuning, gain and keys and on
 * the samples around it, so stream = batch as long as these three are decided from the sound and not from how it was cut.
 * Only the refractory time binds within one call: of the same note from two calls keep the more probable. Neighbouring calls
 * with equal tuning, gain and keys share their work. One span over everything is the dense listening.
 */
export function createNetworkListener(
  options: Partial<NetworkOptions> = {},
  packed: PackedNetwork = TRAINED_NETWORK,
): NetworkListener {
  const settings: NetworkOptions = { ...NETWORK_DEFAULTS, ...options };
  const { rateHz, hop } = packed.shape;
  const network = new Network(packed);
  const frameSec = hop / rateHz;
  const reach = reachOf(packed.shape);
  const asked = framesAsked(packed.peaks, frameSec, settings);
  return {
    kernel: network.kernelKind,
    lookBackSec: reach.samplesBack / rateHz + asked.back * frameSec,
    lookAheadSec: reach.samplesAhead / rateHz + asked.ahead * frameSec,
    products: () => network.products,
    hear(task) {
      network.listenTo({
        source: task.source,
        cents: rounded(task.cents, settings.tuningStepCents),
        gain: 10 ** (rounded(20 * Math.log10(task.gain), settings.gainStepDb) / 20),
        lowMidi: task.lowMidi,
        highMidi: task.highMidi,
      });
      const frames = new Set<number>();
      for (const { fromSec, toSec } of task.spans) {
        const last = Math.ceil(toSec / frameSec) + BESIDE_FRAMES - 1;
        for (let frame = Math.floor(fromSec / frameSec) - BESIDE_FRAMES + 1; frame <= last; frame++)
          frames.add(frame);
      }
      const found = [...frames]
        .sort((a, b) => a - b)
        .flatMap((frame) => notesAt(network, frame, task, frameSec, packed.peaks, settings))
        .filter(({ timeSec }) =>
          task.spans.some(({ fromSec, toSec }) => timeSec >= fromSec && timeSec < toSec),
        );
      return withoutEchoes(
        found.sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi),
        settings,
      ).filter(({ probability }) => probability >= settings.leastProbability);
    },
  };
}

/** a note's moment lies within so many frames of its peak */
const BESIDE_FRAMES = 2;

/** Frames that are asked about beside a span's own. */
function framesAsked(
  { reach, sumReach }: Peaks,
  frameSec: number,
  { soundingAfterSec }: NetworkOptions,
): { readonly back: number; readonly ahead: number } {
  const near = Math.max(reach, sumReach);
  return {
    back: near + BESIDE_FRAMES,
    ahead: Math.max(near, Math.round(soundingAfterSec / frameSec)) + BESIDE_FRAMES,
  };
}

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function probabilityOf(logit: number): number {
  return 1 / (1 + Math.exp(-logit));
}

/** Keys whose onset probability peaks in this frame. */
function notesAt(
  network: Network,
  frame: number,
  task: NetworkTask,
  frameSec: number,
  peaks: Peaks,
  { leastPeak, soundingAfterSec }: NetworkOptions,
): NetworkNote[] {
  const leastLogit = -Math.log(1 / leastPeak - 1);
  const notes: NetworkNote[] = [];
  for (const midi of network.keysOver(frame, leastLogit)) {
    if (midi < task.lowMidi || midi > task.highMidi) continue;
    const peak = network.output(frame, midi, 0);
    let highest = true;
    for (let other = frame - peaks.reach; highest && other <= frame + peaks.reach; other++)
      highest = network.output(other, midi, 0) <= peak;
    if (!highest) continue;
    let sum = 0;
    let weight = 0;
    let moment = 0;
    for (let near = frame - peaks.sumReach; near <= frame + peaks.sumReach; near++) {
      const probability = probabilityOf(network.output(near, midi, 0));
      sum += probability;
      if (Math.abs(near - frame) > peaks.timeReach) continue;
      weight += probability ** 2;
      moment += probability ** 2 * (near + network.output(near, midi, 1));
    }
    notes.push({
      timeSec: (moment / weight) * frameSec,
      midi,
      probability: Math.min(1, sum / peaks.fullSum),
      levelDb: 6 * network.output(frame, midi, 2),
      sounding: probabilityOf(network.output(frame + Math.round(soundingAfterSec / frameSec), midi, 3)),
    });
  }
  return notes;
}

/** Of two onsets of one key within the refractory time the more probable stays. */
function withoutEchoes(notes: readonly NetworkNote[], { refractorySec }: NetworkOptions): NetworkNote[] {
  const kept: NetworkNote[] = [];
  const latest = new Map<number, number>();
  for (const note of notes) {
    const before = latest.get(note.midi);
    if (before !== undefined && note.timeSec - kept[before]!.timeSec < refractorySec) {
      if (note.probability > kept[before]!.probability) kept[before] = note;
      continue;
    }
    latest.set(note.midi, kept.length);
    kept.push(note);
  }
  return kept.sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
