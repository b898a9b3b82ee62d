import { describe, expect, it, vi } from 'vitest';
import { assess, buildExercise } from '../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import type { Playback } from '../../../src/io/playback/index.ts';
import { createTones, renderTones, type Tone } from '../../../src/io/tone/index.ts';

const BEAT_SEC = 60 / 90;

const tonesOf = (choice: ExerciseChoice): readonly Tone[] =>
  buildExercise(choice).steps.flatMap(({ beat, notes }) =>
    notes.map(({ midi }) => ({ timeSec: 0.5 + beat * BEAT_SEC, holdSec: 0.5 * BEAT_SEC, midi })),
  );

describe('the reference sound', () => {
  // Heard by our own engine, as any recording is.
  it.each([
    { key: 'A major', form: 'scale', hands: 'right', octaves: 1 },
    { key: 'Eb minor', form: 'arpeggio', hands: 'left', octaves: 2 },
    { key: 'D major', form: 'progression', hands: 'right', octaves: 1 },
  ] as const)('of $key, $form, $hands hand, is heard as what it is, even and in tune', (choice) => {
    const told = assess(renderTones(tonesOf(choice)), choice);
    if (told.kind !== 'report') throw new Error(told.kind);
    expect(told.report.missed).toEqual([]);
    expect(told.report.notes.map((note) => note.verdict)).toEqual(told.report.notes.map(() => 'correct'));
    expect(Math.abs(told.report.tuning.cents)).toBeLessThan(5);
    const even = told.report.measures.evennessPercent;
    if ('value' in even) expect(even.value).toBeLessThan(3);
  });

  it('begins and ends in silence, without a click, and never fills the scale', () => {
    const [sound] = renderTones([{ timeSec: 0, holdSec: 0.5, midi: 60 }]).channels;
    expect(sound![0]).toBe(0);
    expect(Math.abs(sound!.at(-1)!)).toBeLessThan(1e-3);
    expect(Math.max(...sound!)).toBeLessThanOrEqual(0.5);
    const steps = sound!.slice(1).map((value, i) => Math.abs(value - sound![i]!));
    expect(Math.max(...steps)).toBeLessThan(0.1);
  });
});

describe('playing it', () => {
  const silent = () => {
    let end = (): void => undefined;
    const playback = {
      play: vi.fn(),
      stop: vi.fn(),
      positionSec: () => null,
      onEnd: (callback: () => void) => void (end = callback),
      close: vi.fn(),
    } satisfies Playback;
    return { playback, end: () => end() };
  };
  const C: readonly Tone[] = [{ timeSec: 0, holdSec: 0.1, midi: 60 }];

  it('tells the end once and lets the device go', () => {
    const device = silent();
    const ended = vi.fn();
    createTones(() => device.playback).play(C, ended);
    expect(device.playback.play).toHaveBeenCalledWith(0);
    device.end();
    device.end();
    expect(ended).toHaveBeenCalledTimes(1);
    expect(device.playback.close).toHaveBeenCalledTimes(1);
  });

  it('a new passage ends the last', () => {
    const tones = createTones(() => silent().playback);
    const first = vi.fn();
    const second = vi.fn();
    tones.play(C, first);
    tones.play(C, second);
    expect(first).toHaveBeenCalledTimes(1);
    expect(second).not.toHaveBeenCalled();
    tones.stop();
    expect(second).toHaveBeenCalledTimes(1);
  });
});
