import { describe, expect, it } from 'vitest';
import { buildExercise, listenAndKeep, writeReport } from '../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import type { Heard, KeptSound } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { maybeAgain } from '../../../src/engine/recheck/again.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import { attemptOf } from '../../bench/attempts.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';
import type { Truth } from '../../support/render.ts';

const SCALE: ExerciseChoice = { key: 'G major', form: 'scale', hands: 'right', octaves: 1 };

interface Played {
  readonly truth: Truth;
  readonly heard: Heard;
  readonly sound: KeptSound;
}

async function play(seed: number, repeats: number): Promise<Played> {
  const mistakes = { ...NO_MISTAKES, repeats };
  const student = { bpm: 76, overlapMs: -20, velocity: 66, loudnessJitterDb: 2, mistakes };
  const rendered = await render({ seed, piano: 'dev', exercise: SCALE, student });
  return { truth: rendered.truth, ...listenAndKeep(rendered) };
}

/** Extras of the first listening, of both, and told; and what was perhaps struck again, in number. */
function heardIn({ heard, sound }: Pick<Played, 'heard' | 'sound'>) {
  const blind = matchNotes(heard, buildExercise(SCALE));
  const again = recheck(heard, blind, sound);
  const report = writeReport(again.heard, again.alignment);
  return {
    blind: blind.extras.length,
    again: again.alignment.extras.length,
    told: report.notes.flatMap((note) => (note.verdict === 'extra' ? [note] : [])),
    perhaps: report.perhapsAgainSec?.length ?? 0,
  };
}

// Two keys struck twice on the development piano; after the louder first blow the second seems 10 dB softer, and the alignment explains it.
describe('a key struck again while it still sounds', () => {
  it('is told by both listenings, though by its level alone it would be the string that rings on', async () => {
    const played = await play(17, 2);
    const { blind, again, told } = heardIn(played);
    expect({ blind, again }).toEqual({ blind: 1, again: 2 });
    const repeats = played.truth.notes.filter(({ extraKind }) => extraKind === 'repeat');
    expect(told.map(({ midi, extraKind }) => [midi, extraKind])).toEqual(
      repeats.map(({ midi }) => [midi, 'repeat']),
    );
    told.forEach(({ timeSec }, at) => expect(timeSec).toBeCloseTo(repeats[at]!.timeSec, 2));
  });

  it('is not told where the first listening believes too little in it, and nothing is measured across it', async () => {
    const { blind, again, told, perhaps } = heardIn(await play(9, 2));
    expect({ blind, again, told: told.length, perhaps }).toEqual({ blind: 1, again: 2, told: 1, perhaps: 1 });
  });
});

describe('a key that only sounds again', () => {
  it('is none, though the first listening believes in it: the closer look denies it', async () => {
    const { spec } = attemptOf('standard', 'dev', 31);
    const rendered = await render(spec);
    const { heard, sound } = listenAndKeep(rendered);
    const blind = matchNotes(heard, buildExercise(rendered.truth.exercise));
    const maybe = maybeAgain(heard, blind);
    expect(maybe.map(({ step }) => step)).toEqual([17, 48]);
    const again = recheck(heard, blind, sound);
    expect(again.alignment.extras).toHaveLength(blind.extras.length);
    const asked = again.rechecks.filter(({ blind: before }) => before === 'not-heard');
    expect(asked.map(({ decision }) => decision)).toEqual(['not-struck', 'not-struck']);
  });

  it('is not asked about so soon after the blow that the closer look still sees that, nor after the last step', async () => {
    const { heard } = await play(17, 0);
    const exercise = buildExercise(SCALE);
    const blind = matchNotes(heard, exercise);
    const claiming = (at: number, afterSec: number): Heard => {
      const { timeSec, midi, ...rest } = heard.notes.at(at)!;
      const note = { ...rest, midi, timeSec: timeSec + afterSec };
      const claim = { probability: 1, loudnessDb: 0, sounding: 1, note, timeSec: note.timeSec, midi };
      return { ...heard, candidates: [...(heard.candidates ?? []), claim] };
    };
    const stepsAt = (at: number, afterSec: number): readonly number[] =>
      maybeAgain(claiming(at, afterSec), blind).map(({ step }) => step);
    expect([stepsAt(3, 0.08), stepsAt(3, 0.2), stepsAt(-1, 0.2)]).toEqual([[], [3], []]);
  });
});
