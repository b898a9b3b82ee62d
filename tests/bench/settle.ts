/**
 * What a strike is judged by, fitted anew: `npm run bench:settle [-- --piano dev,other --count 100]`. Every key that the ear took for a strike in
 * attempts of one hand, against truth → the weights of `listen/transcribe/settle.ts` that make it likeliest, beside those in force,
 * and what either gets wrong in these attempts, in hard ones and where both hands play. Of several pianos the first is fitted to. For whoever trains another blind listener: it does not believe as the last one did.
 */
import { parseArgs } from 'node:util';
import { Anchor, createAudioStream, RATE_HZ } from '../../src/engine/listen/audio/index.ts';
import { GRID, Transcriber } from '../../src/engine/listen/transcribe/index.ts';
import type { OnsetCandidate } from '../../src/engine/listen/transcribe/onset-candidate.ts';
import { settle, SETTLE_WEIGHTS, weighable } from '../../src/engine/listen/transcribe/settle.ts';
import type { PianoName, Rendered } from '../support/render.ts';
import { attemptOf } from './attempts.ts';
import type { AttemptSet } from './attempts.ts';
import { percent } from './errors.ts';
import { fitLogistic, logOddsOf } from './logistic.ts';
import type { Seen } from './logistic.ts';
import { bestSemitone, matchToTruth } from './note-score.ts';
import type { Timed } from './note-score.ts';
import { renderCached } from './render-cached.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: { piano: { type: 'string', default: 'dev' }, count: { type: 'string', default: '100' } },
});

/** `noisy` was fitted to other sounds than attempts, and an octave is a ghost of one hand and a note of two: these two stay. */
const KINDS = ['belief', 'softer', 'sounding', 'far', 'agreement'] as const;
const SETS = { standard: 'one hand', hard: 'one hand, hard', together: 'both hands' } as const;
/** Strikes whose chances lie between these, and how many of them were struck. */
const CHANCES = [0.5, 0.7, 0.9, 0.99, 1] as const;

/** All that the ear took for a strike, as `createListener` hears it. */
function strikesIn({ sampleRateHz, channels }: Rendered): readonly OnsetCandidate[] {
  const ear = new Transcriber({ knownCents: null });
  const anchor = new Anchor(
    GRID,
    (block, length) => ear.push(block, length),
    (sample) => ear.beginsAt(sample),
  );
  const audio = createAudioStream({ sampleRateHz, channels: channels.length }, (block, length) =>
    anchor.push(block, length),
  );
  audio.push(channels);
  audio.finish();
  anchor.finish();
  ear.finish();
  return ear.strikes.map((strike) => ({ ...strike, onsetSample: strike.onsetSample - anchor.padding }));
}

async function seenIn(piano: PianoName, set: AttemptSet, index: number): Promise<readonly Seen[]> {
  const rendered = await renderCached(attemptOf(set, piano, index).spec);
  const strikes = strikesIn(rendered);
  const truth = rendered.truth.notes;
  const timed = (some: readonly OnsetCandidate[]): readonly Timed[] =>
    some.map(({ onsetSample, midi }) => ({ timeSec: onsetSample / RATE_HZ, midi }));
  const { semitones } = bestSemitone(timed(settle(strikes).map(({ strike }) => strike)), truth);
  const moved = timed(strikes).map(({ timeSec, midi }) => ({ timeSec, midi: midi + semitones }));
  const struck = new Set(matchToTruth(moved, truth, 50).map((pair) => pair.heard));
  return weighable(strikes).map(({ evidence }, at): Seen => {
    return {
      values: [...KINDS.map((kind) => evidence[kind]), 1],
      known: SETTLE_WEIGHTS.noisy * evidence.noisy + SETTLE_WEIGHTS.harmonic * evidence.harmonic,
      isTrue: struck.has(at),
    };
  });
}

const pianos = values.piano.split(',') as PianoName[];
const bySet = new Map<string, readonly Seen[]>();
for (const piano of pianos)
  for (const [set, name] of Object.entries(SETS)) {
    const all: Seen[] = [];
    for (let index = 0; index < Number(values.count); index++)
      all.push(...(await seenIn(piano, set as AttemptSet, index)));
    bySet.set(`${piano}: ${name}`, all);
  }

const weights = {
  'in force': [...KINDS, 'bias' as const].map((kind) => SETTLE_WEIGHTS[kind]),
  fitted: fitLogistic([...bySet.values()][0]!, KINDS.length + 1),
};
console.log(
  table(
    ['weights', ...KINDS, 'bias'],
    Object.entries(weights).map(([name, own]) => [name, ...own.map((weight) => fixed(weight, 2))]),
  ),
);
const bands = CHANCES.slice(1).map((to, i) => [CHANCES[i]!, to] as const);
const rows = [...bySet].flatMap(([name, seen]) =>
  Object.entries(weights).map(([which, own]) => {
    const told = seen.map((one) => ({ ...one, chance: 1 / (1 + Math.exp(-logOddsOf(own, one))) }));
    const count = (isTold: boolean, isTrue: boolean): string =>
      String(told.filter((one) => one.chance > 0.5 === isTold && one.isTrue === isTrue).length);
    const right = bands.map(([from, to]) => {
      const some = told.filter(({ chance }) => chance > from && chance <= to);
      return `${percent(some.filter(({ isTrue }) => isTrue).length, some.length)} of ${some.length}`;
    });
    return [`${name}, ${which}`, count(true, true), count(true, false), count(false, true), ...right];
  }),
);
console.log(
  `\n${table(['', 'struck', 'invented', 'lost', ...bands.map(([from, to]) => `true at ${from}–${to}`)], rows)}`,
);
