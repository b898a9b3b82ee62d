import { describe, expect, it } from 'vitest';
import { createSettings, remember } from '../../../src/io/settings/index.ts';
import type { Settings } from '../../../src/io/settings/index.ts';
import { withPrinciple, writeFinger } from '../../../src/engine/index.ts';
import { Fingerings } from '../../../src/ui/attempt/fingerings.svelte.ts';
import { Plan } from '../../../src/ui/attempt/plan.svelte.ts';
import { storageIn } from '../../support/storage.ts';

function storage(): Settings {
  const kept = new Map<string, string>();
  return createSettings(() => storageIn(kept));
}
function opened(settings: Settings): Plan {
  const plan = new Plan(new Fingerings(settings));
  plan.remember(settings);
  return plan;
}

describe('what is to be played', () => {
  it('is as it was chosen when the page is opened again', () => {
    const settings = storage();
    const before = opened(settings);
    before.choose({ key: 'D minor', form: 'scale', octaves: 3, minorScale: 'melodic' });
    before.targetBpm = null;
    const { choice, isOwn, recognise, targetBpm } = opened(settings);
    expect(choice).toEqual({
      key: 'D minor',
      form: 'scale',
      hands: 'right',
      octaves: 3,
      minorScale: 'melodic',
    });
    expect({ isOwn, recognise, targetBpm }).toEqual({ isOwn: true, recognise: false, targetBpm: null });
  });

  it('lies under the fingers that were chosen once, at any length and with either hand, when the page is opened again too', () => {
    const settings = storage();
    const before = opened(settings);
    before.choose({ key: 'Ab major', form: 'scale', hands: 'together', octaves: 2 });
    before.finger(withPrinciple(before.choice, 'left', 'thumbs-together'));
    before.choose({ key: 'C major' });
    expect(before.choice).not.toHaveProperty('fingering');
    const after = opened(settings);
    after.choose({ key: 'Ab major', octaves: 4 });
    expect(after.choice.fingering).toEqual({ left: 'thumbs-together' });
    after.choose({ hands: 'right' });
    expect(after.choice).not.toHaveProperty('fingering');
    after.choose({ hands: 'left' });
    expect(after.exercise.steps[6]!.notes[0]!.finger).toBe(4);
    after.finger(withPrinciple(after.choice, 'left', null));
    after.choose({ hands: 'together' });
    expect(after.choice).not.toHaveProperty('fingering');
  });

  it('has the fingers that come with it, as out of an assignment, and keeps them', () => {
    const settings = storage();
    const plan = opened(settings);
    const scale = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;
    const assigned = writeFinger(scale, { hand: 'right', step: 2, fromBottom: 0 }, 2);
    plan.choose(assigned);
    expect(plan.choice).toEqual(assigned);
    const after = opened(settings);
    after.choose(scale);
    expect(after.choice).toEqual(assigned);
  });

  it('of another register and rhythm stays so where the next form can have it, and none is asked for that lies beyond the keyboard', () => {
    const plan = new Plan();
    plan.choose({ form: 'scale', octaves: 4, notesABeat: 4 });
    plan.moveTo(1);
    expect(plan.choice).toMatchObject({ notesABeat: 4, register: 1 });
    plan.choose({ form: 'progression' });
    expect(plan.choice).not.toHaveProperty('notesABeat');
    plan.choose({ form: 'scale', octaves: 4 });
    plan.moveTo(3);
    expect(plan.choice).not.toHaveProperty('register');
  });

  it('is of both hands where only both make it what it is', () => {
    const plan = new Plan();
    plan.choose({ hands: 'left' });
    plan.choose({ form: 'tenths-apart' });
    expect(plan.choice.hands).toBe('together');
  });

  it('that nobody chose is not remembered: what was recognised, or the example', () => {
    const settings = storage();
    opened(settings).adopt({ key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 });
    expect(opened(settings).choice.key).toBe('C major');
  });

  it('is practised on where it was set up, and keeps the tempo of the whole', () => {
    const settings = storage();
    const before = opened(settings);
    before.choose({ key: 'E major' });
    const intention = { stretch: { fromStep: 2, toStep: 5 }, times: 3, rhythm: 'even' } as const;
    before.setUp({ fromStep: 2, toStep: 5, tempoBpm: 40, intention });
    const after = opened(settings);
    expect(after.practice).toEqual(before.practice);
    expect(after.targetBpm).toBe(40);
    after.wholeAgain();
    expect(after.targetBpm).toBe(80);
    expect(opened(settings).practice).toBeNull();
  });

  it.each([
    ['steps that it does not have', { fromStep: 2, toStep: 99, tempoBpm: 40 }],
    ['a stretch backwards', { fromStep: 5, toStep: 2, tempoBpm: 40 }],
    ['no tempo', { fromStep: 2, toStep: 5 }],
    [
      'a rhythm that is none',
      { fromStep: 2, toStep: 5, tempoBpm: 40, intention: { times: 3, rhythm: 'swing' } },
    ],
  ])('is played whole where %s are remembered of it', (_, practice) => {
    const settings = storage();
    const { choice } = opened(settings);
    remember(settings, 'plan', { isOwn: true, choice, recognise: false, targetBpm: 80, practice });
    expect(opened(settings).practice).toBeNull();
  });

  it.each([
    ['nothing', null],
    ['no exercise', { choice: { key: 'H major', form: 'scale', hands: 'right', octaves: 1 } }],
    ['a tempo that is none', { choice: 4, targetBpm: 'fast' }],
    ['something else', [1, 2]],
  ])('is as at first where %s is remembered', (_, kept) => {
    const settings = storage();
    remember(settings, 'plan', kept);
    const { choice, isOwn, targetBpm } = opened(settings);
    expect({ key: choice.key, isOwn, targetBpm }).toEqual({ key: 'C major', isOwn: false, targetBpm: 80 });
  });
});
