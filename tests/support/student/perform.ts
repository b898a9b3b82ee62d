import type { Exercise, ExpectedNote, ExpectedStep, Hand } from '../../../src/engine/exercise/index.ts';
import type { Random } from '../random.ts';
import type { StudentKnobs } from './knobs.ts';
import { drawMistakes } from './mistakes.ts';
import type { Keystroke, Missed, Performance } from './types.ts';

/** dB a step of velocity. */
export const DB_PER_VELOCITY = 0.26;

/** A blow whose release is decided when the next blow of its hand is known. */
type Blow = Omit<Keystroke, 'releaseSec'> & { readonly heldSec?: number };

/** Exercise + knobs → the keys struck and the keys left out. The same seed gives the same performance. */
export function perform(exercise: Exercise, knobs: StudentKnobs, random: Random): Performance {
  const mistakes =
    'wrong' in knobs.mistakes
      ? drawMistakes(exercise, knobs.mistakes, random.fork('mistakes'))
      : knobs.mistakes;
  const stopStep =
    knobs.stopAfter === null ? exercise.steps.length : Math.ceil(exercise.steps.length * knobs.stopAfter);
  const timing = random.fork('timing');
  const touch = random.fork('touch');
  const blows: Blow[] = [];
  const missed: Missed[] = [];
  const secPerBeat = 60 / knobs.bpm;
  const lastBeat = exercise.steps.at(-1)!.beat;
  const stretchAt = (beat: number): number =>
    1 + (knobs.driftPercent / 100) * (lastBeat === 0 ? 0 : beat / lastBeat - 0.5);

  let clockSec = knobs.leadInSec;
  let lastStep: ExpectedStep | undefined;
  const advanceTo = (step: ExpectedStep): void => {
    if (lastStep) {
      const beats = Math.max(step.beat - lastStep.beat, 0);
      clockSec += beats * secPerBeat * stretchAt((step.beat + lastStep.beat) / 2);
    }
    lastStep = step;
  };

  const strikeStep = (step: ExpectedStep, replayed: boolean): void => {
    const late = replayed ? 0 : latenessSec(step, knobs);
    clockSec += late;
    const own = replayed ? [] : mistakes.filter((mistake) => mistake.step === step.step);
    for (const hand of ['left', 'right'] as const) {
      const notes = step.notes.filter((note) => note.hand === hand);
      if (notes.length === 0) continue;
      const apart = timing.normal(knobs.handsApartMs.sd) + knobs.handsApartMs.mean;
      const together = new Set(step.notes.map((note) => note.hand)).size === 2;
      const handSec =
        clockSec +
        timing.normal(knobs.jitterMs) / 1000 +
        (together ? ((hand === 'left' ? -0.5 : 0.5) * apart) / 1000 : 0);
      const offsetsSec = spreadSec(notes.length, knobs.chordSpreadMs, timing);
      notes.forEach((note, index) => {
        const timeSec = Math.max(handSec + offsetsSec[index]!, 0.05);
        const velocity = velocityOf(note, notes, step, exercise, knobs, touch);
        const mistake = own.find(
          (candidate) => candidate.kind !== 'restart' && step.notes[candidate.note] === note,
        );
        const midi = note.midi + 12 * knobs.octaveShift;
        const blow: Blow = replayed
          ? { timeSec, midi, velocity, hand, step: step.step, verdict: 'extra', extraKind: 'restart' }
          : { timeSec, midi, velocity, hand, step: step.step, verdict: 'correct' };
        const shifted = (key: number): number => key + 12 * knobs.octaveShift;
        if (mistake?.kind === 'missed') {
          missed.push({ step: step.step, midi, hand, why: 'left-out' });
        } else if (mistake?.kind === 'wrong') {
          blows.push({ ...blow, midi: shifted(mistake.midi), verdict: 'wrong', wantedMidi: midi });
        } else {
          blows.push(blow);
          if (mistake?.kind === 'slip') blows.push(slipBeside(blow, shifted(mistake.midi), timing));
        }
      });
    }
    for (const mistake of own) if (mistake.kind === 'repeat') repeatStroke(step.notes[mistake.note]!, step);
  };

  const repeatStroke = (note: ExpectedNote, step: ExpectedStep): void => {
    clockSec += timing.uniform(0.14, 0.26);
    blows.push({
      timeSec: clockSec,
      midi: note.midi + 12 * knobs.octaveShift,
      velocity: knobs.velocity + timing.normal(4),
      hand: note.hand,
      step: step.step,
      verdict: 'extra',
      extraKind: 'repeat',
    });
  };

  for (const step of exercise.steps) {
    advanceTo(step);
    if (step.step >= stopStep) {
      for (const { midi, hand } of step.notes)
        missed.push({ step: step.step, midi: midi + 12 * knobs.octaveShift, hand, why: 'broken-off' });
      continue;
    }
    strikeStep(step, false);
    const restart = mistakes.find((mistake) => mistake.kind === 'restart' && mistake.step === step.step);
    if (restart?.kind === 'restart') {
      clockSec += timing.uniform(0.5, 1.1);
      lastStep = undefined;
      for (const again of exercise.steps.slice(restart.backTo, step.step + 1)) {
        advanceTo(again);
        strikeStep(again, true);
      }
    }
  }
  return finished(blows, missed, knobs);
}

function latenessSec(step: ExpectedStep, { lateCrossing }: StudentKnobs): number {
  if (!lateCrossing) return 0;
  const { ms, kind, direction } = lateCrossing;
  const hit = step.crossings.some(
    (crossing) =>
      (kind === undefined || crossing.kind === kind) &&
      (direction === undefined || crossing.direction === direction),
  );
  return hit ? ms / 1000 : 0;
}

/** Onsets of a chord's notes about its place: first and last exactly the spread apart, the order by chance. */
function spreadSec(count: number, spreadMs: number, random: Random): readonly number[] {
  if (count === 1) return [0];
  const places = Array.from({ length: count }, (_, index) =>
    index === 0 ? 0 : index === count - 1 ? 1 : random.uniform(0, 1),
  );
  for (let index = count - 1; index > 0; index--) {
    const other = random.integer(index + 1);
    [places[index], places[other]] = [places[other]!, places[index]!];
  }
  return places.map((place) => ((place - 0.5) * spreadMs) / 1000);
}

function velocityOf(
  note: ExpectedNote,
  chord: readonly ExpectedNote[],
  step: ExpectedStep,
  exercise: Exercise,
  knobs: StudentKnobs,
  random: Random,
): number {
  const place = exercise.steps.length < 2 ? 0 : (2 * step.step) / (exercise.steps.length - 1) - 1;
  const inner = note !== chord[0] && note !== chord.at(-1);
  const db =
    random.normal(knobs.loudnessJitterDb) +
    knobs.endsDb * place * place +
    (note.finger === 1 ? knobs.thumbDb : 0) +
    (inner ? knobs.innerDb : 0) +
    (note.hand === 'left' ? knobs.leftHandDb : 0);
  return Math.min(Math.max(knobs.velocity + db / DB_PER_VELOCITY, 1), 127);
}

/** A neighbour caught up to 40 ms before or after its note, softer and short. */
function slipBeside(blow: Blow, midi: number, random: Random): Blow {
  return {
    timeSec: blow.timeSec + random.uniform(-0.02, 0.04),
    midi,
    velocity: Math.max(blow.velocity - random.uniform(4, 10) / DB_PER_VELOCITY, 1),
    hand: blow.hand,
    step: blow.step,
    verdict: 'extra',
    extraKind: 'slip',
    heldSec: random.uniform(0.06, 0.14),
  };
}

/** Decides when each key is let go: `overlapMs` after the hand's next onset, and always before the same key is struck again. */
function finished(blows: readonly Blow[], missed: readonly Missed[], knobs: StudentKnobs): Performance {
  const inTime = [...blows].sort((a, b) => a.timeSec - b.timeSec);
  const nextOnset = (blow: Blow, hand: Hand): number | undefined =>
    inTime.find((other) => other.hand === hand && other.timeSec > blow.timeSec && other.step !== blow.step)
      ?.timeSec;
  const last = inTime.at(-1)?.timeSec ?? knobs.leadInSec;
  const strokes = inTime.map(({ heldSec, ...blow }): Keystroke => {
    const nextSec = nextOnset(blow, blow.hand) ?? last + 0.6;
    const wanted = heldSec === undefined ? nextSec + knobs.overlapMs / 1000 : blow.timeSec + heldSec;
    const same = inTime.find((other) => other.midi === blow.midi && other.timeSec > blow.timeSec)?.timeSec;
    const longest = Math.min(wanted, blow.timeSec + 4, same === undefined ? Infinity : same - 0.03);
    return { ...blow, releaseSec: Math.max(longest, blow.timeSec + 0.03) };
  });
  return { strokes, missed, durationSec: last + 0.6 + knobs.leadOutSec, pedal: knobs.pedal };
}
