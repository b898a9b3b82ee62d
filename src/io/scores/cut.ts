import {
  barlines,
  buildExercise,
  handsIn,
  hasUpbeat,
  isKey,
  midiOf,
  OWN_PASSAGE,
  PASSAGE_MOST,
} from '../../engine/index.ts';
import type { ExerciseChoice, OwnPassage } from '../../engine/index.ts';
import { checked } from '../check/index.ts';
import { ScoreError } from './types.ts';
import type { Bars, WholeScore } from './types.ts';

/** Beats as they are kept: a third of a quarter note is no round number. */
const PLACES = 1e4;
const rounded = (beats: number): number => Math.round(beats * PLACES) / PLACES;

/**
 * Music → the passage of it, for the hands that have something to play. What began before the first bar is left out. Throws ScoreError
 * where there is nothing to play, too much of it, or more than hands can do.
 */
export function cutPassage(score: WholeScore, bars: Bars | null): ExerciseChoice {
  const upbeat = hasUpbeat(score) ? 1 : 0;
  const count = score.bars.length - upbeat;
  const { from, to } = bars ?? { from: 1, to: count };
  if (from > to || from < 1 || to > count)
    throw new ScoreError({ trouble: 'music-no-bars', from, to, bars: count });
  if (to - from + 1 > PASSAGE_MOST.bars)
    throw new ScoreError({ trouble: 'music-too-long', bars: to - from + 1, most: PASSAGE_MOST.bars });
  const first = from === 1 ? 0 : from - 1 + upbeat;
  const last = to - 1 + upbeat;
  const hindrance = score.hindrances.find((one) => one.from >= first && one.to <= last);
  const others = score.notes.length > 0 && count > 1 ? count : null;
  if (hindrance !== undefined) throw new ScoreError({ trouble: hindrance.trouble, bars: others });
  const lines = barlines(score);
  const [beginsAt, endsAt] = [lines[first]!, lines[last + 1]!];
  const notes = score.notes
    .filter(({ beat }) => beat >= beginsAt - 1 / PLACES && beat < endsAt - 1 / PLACES)
    .map((note) => ({
      ...note,
      beat: rounded(Math.max(0, note.beat - beginsAt)),
      beats: Math.max(1 / PLACES, rounded(Math.min(note.beats, endsAt - note.beat))),
    }));
  if (notes.length === 0) throw new ScoreError({ trouble: 'music-no-notes' });
  const passage: OwnPassage = {
    title: score.title.trim().slice(0, PASSAGE_MOST.titleLetters),
    ...(score.bpm !== null && { bpm: Math.round(score.bpm * 100) / 100 }),
    bars: score.bars.slice(first, last + 1).map((bar) => ({ ...bar, beats: rounded(bar.beats) })),
    notes,
  };
  return playable(score.key, passage);
}

/** A passage → the choice of it; throws ScoreError where nobody can play it. */
export function playable(key: string, passage: unknown): ExerciseChoice {
  const found = checked(OWN_PASSAGE, passage);
  if (!('value' in found)) throw new ScoreError({ trouble: 'music-unplayable' });
  try {
    const choice = {
      key,
      form: 'passage',
      hands: handsIn(found.value),
      octaves: 1,
      passage: found.value,
    } as const;
    return buildExercise(choice).choice;
  } catch {
    throw new ScoreError({ trouble: whyUnplayable(found.value) });
  }
}

function whyUnplayable({ notes }: OwnPassage): 'music-one-moment' | 'music-beyond-keys' | 'music-unplayable' {
  if (!notes.every(({ name }) => isKey(midiOf(name) ?? NaN))) return 'music-beyond-keys';
  return new Set(notes.map(({ beat }) => beat)).size < 2 ? 'music-one-moment' : 'music-unplayable';
}
