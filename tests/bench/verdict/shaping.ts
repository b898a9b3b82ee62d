import type { Exercise } from '../../../src/engine/exercise/index.ts';
import type { Random } from '../../support/random.ts';
import type { Keystroke, Performance } from '../../support/student/types.ts';
import { DB_PER_VELOCITY } from '../../support/student/perform.ts';

/** A performance → the same, shaped: what a player does on purpose, or a fault that no knob of the student makes. */
export type Shape = (performance: Performance, exercise: Exercise, random: Random) => Performance;

/** Steps → how many ms later each comes than played so far, for all of its keys. */
function moved(performance: Performance, laterMs: (stroke: Keystroke) => number): Performance {
  const strokes = performance.strokes
    .map((stroke) => {
      const later = laterMs(stroke) / 1000;
      return { ...stroke, timeSec: stroke.timeSec + later, releaseSec: stroke.releaseSec + later };
    })
    .sort((a, b) => a.timeSec - b.timeSec);
  const endSec = Math.max(...strokes.map(({ releaseSec }) => releaseSec));
  return { ...performance, strokes, durationSec: Math.max(performance.durationSec, endSec + 1.2) };
}

/** Every interval stretched by a factor of its step; what happened between keys of one step stays. */
function stretched(
  performance: Performance,
  exercise: Exercise,
  factor: (step: number) => number,
): Performance {
  const first = new Map<number, number>();
  for (const { step, timeSec } of performance.strokes)
    if (step !== null && !first.has(step)) first.set(step, timeSec);
  const later = new Map<number, number>();
  let sum = 0;
  let before: number | undefined;
  for (const { step } of exercise.steps) {
    const at = first.get(step);
    if (at !== undefined && before !== undefined) sum += (at - before) * (factor(step) - 1) * 1000;
    if (at !== undefined) before = at;
    later.set(step, sum);
  }
  const held = moved(performance, ({ step }) => later.get(step ?? 0) ?? 0);
  // A key is held on until the next comes: the longer interval is no gap.
  const strokes = held.strokes.map((stroke) => {
    const more = ((later.get((stroke.step ?? 0) + 1) ?? sum) - (later.get(stroke.step ?? 0) ?? 0)) / 1000;
    return { ...stroke, releaseSec: Math.max(stroke.timeSec + 0.03, stroke.releaseSec + more) };
  });
  return { ...held, strokes };
}

function louder(performance: Performance, byDb: (stroke: Keystroke) => number): Performance {
  const strokes = performance.strokes.map((stroke) => {
    const velocity = stroke.velocity + byDb(stroke) / DB_PER_VELOCITY;
    return { ...stroke, velocity: Math.min(Math.max(velocity, 1), 127) };
  });
  return { ...performance, strokes };
}

/** The last fifth slows down, the last interval to `times` the usual one. */
export const ritardando =
  (times: number): Shape =>
  (performance, exercise) => {
    const last = exercise.steps.length - 1;
    const from = Math.floor(last * 0.8);
    return stretched(performance, exercise, (step) =>
      step <= from ? 1 : 1 + ((times - 1) * (step - from)) / (last - from),
    );
  };

/** The last note waited for. */
export const longLast =
  (times: number): Shape =>
  (performance, exercise) =>
    stretched(performance, exercise, (step) => (step === exercise.steps.length - 1 ? times : 1));

/** Tempo that swings slowly about its mean, `share` each way, over about `stepsLong` steps. */
export const rubato =
  (share: number, stepsLong: number): Shape =>
  (performance, exercise) =>
    stretched(performance, exercise, (step) => 1 + share * Math.sin((2 * Math.PI * step) / stepsLong));

/** Louder and louder up to the top and back, or to the end. */
export const swell =
  (db: number): Shape =>
  (performance, exercise) => {
    const turn = exercise.steps.find((one) => one.turn)?.step ?? exercise.steps.length - 1;
    return louder(performance, ({ step }) => {
      const at = step ?? 0;
      return db * (at <= turn ? at / turn : 1 - (at - turn) / Math.max(1, exercise.steps.length - 1 - turn));
    });
  };

/** Louder (+) or softer from the first step to the last. */
export const crescendo =
  (db: number): Shape =>
  (performance, exercise) =>
    louder(performance, ({ step }) => (db * (step ?? 0)) / (exercise.steps.length - 1));

/** Every so-manieth note accented. */
export const accents =
  (every: number, db: number): Shape =>
  (performance) =>
    louder(performance, ({ step }) => ((step ?? 0) % every === 0 ? db : 0));

/** Some stretches connected, others let go early: `share` of the steps, by this much before the next. */
export const partlyDetached =
  (share: number, gapMs: number): Shape =>
  (performance, exercise, random) => {
    const from = random.integer(Math.max(1, Math.round(exercise.steps.length * (1 - share))));
    const to = from + exercise.steps.length * share;
    const strokes = performance.strokes.map((stroke) => {
      const at = stroke.step ?? 0;
      if (at < from || at >= to) return stroke;
      return { ...stroke, releaseSec: Math.max(stroke.timeSec + 0.04, stroke.releaseSec - gapMs / 1000) };
    });
    return { ...performance, strokes };
  };

/** Waits so long before one step, as a player who looks for the next key. */
export const stopsAt =
  (sec: number): Shape =>
  (performance, exercise, random) => {
    const at = 2 + random.integer(exercise.steps.length - 4);
    return moved(performance, ({ step }) => ((step ?? 0) >= at ? 1000 * sec : 0));
  };

/** One change of chord takes so many times as long as the others. */
export const hesitates =
  (times: number): Shape =>
  (performance, exercise, random) => {
    const at = 1 + random.integer(exercise.steps.length - 1);
    return stretched(performance, exercise, (step) => (step === at ? times : 1));
  };

/** Long and short in turn. */
export const limps =
  (share: number): Shape =>
  (performance, exercise) =>
    stretched(performance, exercise, (step) => 1 + (step % 2 === 0 ? share : -share));

/** The inner keys of all chords softer. */
export const weakInner =
  (db: number): Shape =>
  (performance) =>
    louder(performance, (stroke) => {
      const chord = performance.strokes
        .filter(({ step, hand }) => step === stroke.step && hand === stroke.hand)
        .map(({ midi }) => midi);
      const inner =
        chord.length > 2 && stroke.midi !== Math.min(...chord) && stroke.midi !== Math.max(...chord);
      return inner ? -db : 0;
    });

/** Time that wanders as a clock in the head does: each interval by itself, besides the fingers' own scatter (Wing & Kristofferson 1973, memory). */
export const wandering =
  (share: number): Shape =>
  (performance, exercise, random) => {
    const own = exercise.steps.map(() => 1 + random.normal(share));
    return stretched(performance, exercise, (step) => own[step] ?? 1);
  };
