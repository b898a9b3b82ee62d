/**
 * Our engine beside a public CNN transcriber on the same attempts:
 * `npm run bench:peer [-- --count 8 --piano test]`, `--count` attempts of each set.
 *
 * The peer (npm `@spotify/basic-pitch`, Apache-2.0, on TensorFlow.js, thresholds as published: onset 0.5, frame 0.3) is
 * installed into a temporary folder, which is removed afterwards; it is no dependency. It knows no exercise, so our blind
 * listening is the like for like; the report, which knows it, stands beside. To both blind listeners one common semitone is
 * forgiven. The seconds are of one core, the machine's load included.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { assess, listen } from '../../src/engine/index.ts';
import { standardDeviation } from '../../src/engine/base/statistics.ts';
import { Resampler } from '../../src/engine/listen/audio/resample.ts';
import { render } from '../support/render.ts';
import type { Rendered } from '../support/render.ts';
import { attemptOf } from './attempts.ts';
import type { Attempt } from './attempts.ts';
import { chordAttemptOf } from './chord-attempts.ts';
import { addCounts, bestSemitone, fMeasure, matchToTruth } from './note-score.ts';
import type { NoteCounts, Timed } from './note-score.ts';
import { fixed, table } from './table.ts';

/** The kernel for WebAssembly is newer than the peer's own TensorFlow, with which it shares its registry; the older one fails. */
const PACKAGES = [
  '@spotify/basic-pitch@1.0.1',
  '@tensorflow/tfjs-core@4.22.0',
  '@tensorflow/tfjs-converter@4.22.0',
  '@tensorflow/tfjs-backend-wasm@4.22.0',
];
const PEER_RATE_HZ = 22_050;
const ONSET_THRESHOLD = 0.5;
const FRAME_THRESHOLD = 0.3;
const LEAST_FRAMES = 5;

type Matrix = number[][];
interface PeerModule {
  readonly BasicPitch: new (model: Promise<unknown>) => {
    evaluateModel(
      samples: Float32Array,
      onComplete: (frames: Matrix, onsets: Matrix, contours: Matrix) => void,
      onProgress: (share: number) => void,
    ): Promise<void>;
  };
  readonly outputToNotesPoly: (
    frames: Matrix,
    onsets: Matrix,
    onset: number,
    frame: number,
    least: number,
  ) => unknown;
  readonly noteFramesToTime: (notes: unknown) => readonly { startTimeSeconds: number; pitchMidi: number }[];
}
interface TensorFlow {
  setBackend(name: string): Promise<boolean>;
  ready(): Promise<void>;
  loadGraphModel(handler: { load: () => Promise<object> }): Promise<unknown>;
}

type Transcriber = (sound: Rendered) => Promise<readonly Timed[]>;

/** Installs the peer into `folder` → a function that transcribes with it. */
async function installPeer(folder: string): Promise<Transcriber> {
  const options = ['--prefix', folder, '--no-audit', '--no-fund', '--ignore-scripts', '--loglevel', 'error'];
  execFileSync('npm', ['install', ...options, ...PACKAGES], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const require = createRequire(resolve(folder, 'index.js'));
  const modules = resolve(folder, 'node_modules');
  const tensorFlow = require(resolve(modules, '@tensorflow/tfjs')) as TensorFlow;
  const wasm = require(resolve(modules, '@tensorflow/tfjs-backend-wasm')) as {
    setWasmPaths(path: string): void;
  };
  wasm.setWasmPaths(`${resolve(modules, '@tensorflow/tfjs-backend-wasm/dist')}/`);
  if (!(await tensorFlow.setBackend('wasm'))) throw new Error('the peer: TensorFlow has no WebAssembly here');
  await tensorFlow.ready();
  const peer = require(resolve(modules, '@spotify/basic-pitch')) as PeerModule;
  const model = new peer.BasicPitch(
    tensorFlow.loadGraphModel({
      load: () => Promise.resolve(modelIn(resolve(modules, '@spotify/basic-pitch/model'))),
    }),
  );
  return async (sound) => {
    const frames: Matrix = [];
    const onsets: Matrix = [];
    await model.evaluateModel(
      atPeerRate(sound),
      (someFrames, someOnsets) => {
        frames.push(...someFrames);
        onsets.push(...someOnsets);
      },
      () => undefined,
    );
    const notes = peer.outputToNotesPoly(frames, onsets, ONSET_THRESHOLD, FRAME_THRESHOLD, LEAST_FRAMES);
    return peer
      .noteFramesToTime(notes)
      .map(({ startTimeSeconds, pitchMidi }) => ({ timeSec: startTimeSeconds, midi: pitchMidi }));
  };
}

/** The model's files → what TensorFlow wants to be handed. */
function modelIn(folder: string): object {
  const model = JSON.parse(readFileSync(resolve(folder, 'model.json'), 'utf8')) as {
    modelTopology: object;
    format: string;
    weightsManifest: { paths: string[]; weights: object[] }[];
  };
  const [group] = model.weightsManifest;
  const bytes = Uint8Array.from(readFileSync(resolve(folder, group!.paths[0]!)));
  const { modelTopology, format } = model;
  return { modelTopology, format, weightSpecs: group!.weights, weightData: bytes.buffer };
}

function atPeerRate({ channels, sampleRateHz }: Rendered): Float32Array {
  const sound = channels[0]!;
  const half = new Float32Array(Math.ceil((sound.length * PEER_RATE_HZ) / sampleRateHz) + 1);
  let at = 0;
  const resampler = new Resampler(sampleRateHz, PEER_RATE_HZ, (block, length) => {
    half.set(block.subarray(0, Math.min(length, half.length - at)), at);
    at = Math.min(at + length, half.length);
  });
  resampler.push(Float64Array.from(sound), sound.length);
  resampler.finish();
  return half;
}

/** What one listener made of one attempt. */
interface Outcome {
  readonly at: Readonly<Record<50 | 25, NoteCounts>>;
  readonly errorsMs: readonly number[];
  readonly sec: number;
}

async function outcomeOf(
  rendered: Rendered,
  transcribe: Transcriber,
  forgiveSemitone: boolean,
): Promise<Outcome> {
  const truth = rendered.truth.notes;
  const startMs = performance.now();
  const heard = await transcribe(rendered);
  const sec = (performance.now() - startMs) / 1000;
  const notes = forgiveSemitone ? bestSemitone(heard, truth).notes : heard;
  const count = (windowMs: number): NoteCounts => ({
    matched: matchToTruth(notes, truth, windowMs).length,
    heard: notes.length,
    truth: truth.length,
  });
  const errorsMs = matchToTruth(notes, truth, 50).map(({ errorMs }) => errorMs);
  return { at: { 50: count(50), 25: count(25) }, errorsMs, sec };
}

const { values } = parseArgs({
  options: { count: { type: 'string', default: '8' }, piano: { type: 'string', default: 'test' } },
});
const piano = values.piano === 'dev' ? 'dev' : 'test';
const SETS: Readonly<Record<string, (index: number) => Attempt>> = {
  'single notes, one hand': (index) => attemptOf('standard', piano, index),
  'chords of one hand': (index) => chordAttemptOf('one-hand', piano, index),
  'hands together': (index) => chordAttemptOf('both-hands', piano, index),
  'hands an octave apart, unequal': (index) => chordAttemptOf('octave-pairs', piano, index),
};

const folder = mkdtempSync(resolve(tmpdir(), 'evenfall-peer-'));
try {
  const peer = await installPeer(folder);
  const listeners: readonly (readonly [string, Transcriber, boolean])[] = [
    ['our listening, blind', (sound) => Promise.resolve(listen(sound).notes), true],
    ['our report', (sound) => Promise.resolve(reportedNotes(sound)), false],
    ['the peer', peer, true],
  ];
  const rows: string[][] = [];
  for (const [set, attempt] of Object.entries(SETS)) {
    const sounds: Rendered[] = [];
    for (let index = 0; index < Number(values.count); index++) sounds.push(await render(attempt(index).spec));
    const soundSec = sounds.reduce((sum, sound) => sum + sound.channels[0]!.length / sound.sampleRateHz, 0);
    for (const [name, transcribe, forgive] of listeners) {
      const outcomes: Outcome[] = [];
      for (const sound of sounds) outcomes.push(await outcomeOf(sound, transcribe, forgive));
      const f = (windowMs: 50 | 25): string =>
        fixed(fMeasure(addCounts(outcomes.map(({ at }) => at[windowMs]))), 4);
      const sec = outcomes.reduce((sum, outcome) => sum + outcome.sec, 0);
      const errors = outcomes.flatMap(({ errorsMs }) => errorsMs);
      rows.push([
        set,
        name,
        f(50),
        f(25),
        `${fixed(standardDeviation(errors), 1)} ms`,
        fixed(soundSec / sec, 0),
      ]);
    }
  }
  console.log(`\n${values.count} attempts of each set, ${piano} piano\n`);
  console.log(table(['set', 'listener', 'F ±50 ms', 'F ±25 ms', 'onset SD', 'times real time'], rows));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function reportedNotes(sound: Rendered): readonly Timed[] {
  const assessment = assess(sound, sound.truth.exercise);
  return assessment.kind === 'report' ? assessment.report.notes : [];
}
