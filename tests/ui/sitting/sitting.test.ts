import { describe, expect, it } from 'vitest';
import { EvenfallError } from '../../../src/io/troubles/index.ts';
import type { Sound } from '../../../src/ui/attempt/sound.ts';
import type { SittingDevices } from '../../../src/ui/sitting/state/devices.ts';
import { rig, settle, TOLD } from './rig.ts';

describe('one touch', () => {
  it('opens the ear, keeps the screen awake, begins the pulse, and waits', async () => {
    const { sitting, log } = rig();
    await sitting.listen();
    expect(sitting.phase).toBe('on');
    expect(sitting.face).toBe('waiting');
    expect(log).toEqual(['pulse 80', 'no click', 'awake', 'open', 'ear 2.5 s']);
  });

  it('that is refused says why and lets the screen sleep', async () => {
    const { sitting, log } = rig({
      openMicrophone: () => Promise.reject(new EvenfallError({ trouble: 'microphone-denied' })),
    });
    await sitting.listen();
    expect(sitting.phase).toBe('off');
    expect(sitting.trouble).toEqual({ trouble: 'microphone-denied' });
    expect(log).toContain('asleep');
    expect(log).toContain('pulse stops');
  });

  it('taken back before the microphone came closes it again', async () => {
    const { sitting, log } = rig();
    const opening = sitting.listen();
    await sitting.stop();
    await opening;
    expect(sitting.phase).toBe('off');
    expect(log).toContain('close');
    expect(log).not.toContain('ear 2.5 s');
  });
});

describe('an attempt', () => {
  it('is kept before it is analysed, then told, and the next may begin', async () => {
    const { sitting, log, pass, attempt } = rig();
    await sitting.listen();
    log.length = 0;
    pass(5);
    attempt(4, 0);
    expect(sitting.face).toBe('working');
    expect(sitting.closed).toHaveLength(2);
    await settle();
    expect(sitting.face).toBe('told');
    expect(sitting.told?.assessment).toBe(TOLD);
    expect(log.filter((line) => /keep|analyse|complete|unfinished/.test(line))).toEqual([
      'unfinished begins',
      'keep 3.9 s',
      'unfinished ends',
      'analyse 3.9 s of C major at 80',
      'complete an id',
    ]);
    expect(sitting.notes).toEqual([]);
  });

  it('takes the page from its second certain note on, a told one before it notwithstanding', async () => {
    const { sitting, pass, attempt, hear } = rig();
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    const guess = { kind: 'struck', id: 9, timeSec: 9, midi: 76, levelDb: -20, final: false } as const;
    hear(guess);
    expect(sitting.face).toBe('told');
    hear({ ...guess, midi: 64, final: true });
    expect(sitting.face).toBe('told');
    hear({ ...guess, id: 10, timeSec: 9.4, midi: 67, final: true });
    expect(sitting.face).toBe('listening');
  });

  it('may be the tenth in a row, without a touch', async () => {
    const { sitting, log, pass, attempt } = rig();
    await sitting.listen();
    for (let round = 0; round < 10; round += 1) {
      pass(4);
      attempt(4 + round * 7, round * 2);
      await settle();
    }
    expect(sitting.attempts).toBe(10);
    expect(sitting.told?.number).toBe(10);
    expect(log.filter((line) => line.startsWith('keep'))).toHaveLength(10);
    expect(log.filter((line) => line === 'open')).toHaveLength(1);
  });

  it('under way is laid aside piece by piece, and at once when the page is hidden', async () => {
    const { sitting, log, pass, hear, seen } = rig();
    await sitting.listen();
    pass(5);
    hear({ kind: 'started', timeSec: 4.5, cutSec: 3.5 });
    log.length = 0;
    const level = { kind: 'level', peakDb: -20, clipped: false, noiseDb: -70 } as const;
    pass(0.06);
    hear({ ...level, timeSec: 5.06 });
    expect(log).toEqual([]);
    pass(0.14);
    hear({ ...level, timeSec: 5.2 });
    pass(0.09);
    seen(false);
    expect(log).toEqual(['lay aside 0.2 s', 'lay aside 0.1 s']);
  });

  it('begun anew loses what was played before, on the string and in its sound', async () => {
    const { sitting, log, pass, hear } = rig();
    await sitting.listen();
    pass(9);
    const note = { kind: 'struck', midi: 60, levelDb: -20, final: true } as const;
    hear({ ...note, id: 1, timeSec: 4 });
    hear({ kind: 'started', timeSec: 4, cutSec: 3 });
    hear({ ...note, id: 2, timeSec: 6 });
    hear({ kind: 'started', timeSec: 6, cutSec: 5.4 });
    expect(sitting.notes.map(({ id }) => id)).toEqual([2]);
    hear({ kind: 'ended', startSec: 5.4, endSec: 8.4, notes: 1 });
    await settle();
    expect(log.filter((line) => line.startsWith('keep'))).toEqual(['keep 3.0 s']);
    expect(sitting.attempts).toBe(1);
  });

  it('that was no exercise is let go: neither kept nor counted, and what was told stays', async () => {
    const { sitting, log, pass, attempt, hear } = rig();
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    hear({ kind: 'struck', id: 7, timeSec: 9, midi: 60, levelDb: -20, final: true });
    hear({ kind: 'started', timeSec: 9, cutSec: 8 });
    log.length = 0;
    hear({ kind: 'let-go', timeSec: 12 });
    expect(log).toEqual(['unfinished ends', 'no click']);
    expect(sitting.notes).toEqual([]);
    expect(sitting.attempts).toBe(1);
    expect(sitting.face).toBe('told');
    expect(sitting.passedOver).toBe(true);
    pass(8);
    hear({ kind: 'started', timeSec: 15, cutSec: 14 });
    expect(sitting.passedOver).toBe(false);
  });

  it('is not begun by a single note: it turns nothing over, and is forgotten', async () => {
    const { sitting, log, pass, attempt, hear } = rig();
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    log.length = 0;
    hear({ kind: 'struck', id: 7, timeSec: 9, midi: 51, levelDb: -30, final: true });
    expect(sitting.face).toBe('told');
    hear({ kind: 'forgotten', timeSec: 9 });
    expect(sitting.notes).toEqual([]);
    expect(sitting.face).toBe('told');
    expect(sitting.passedOver).toBe(false);
    expect(log.at(-1)).toBe('no click');
    hear({ kind: 'struck', id: 8, timeSec: 20, midi: 60, levelDb: -20, final: true });
    hear({ kind: 'struck', id: 9, timeSec: 20.5, midi: 64, levelDb: -20, final: true });
    expect(sitting.face).toBe('listening');
  });

  it('that stops within the exercise says that it waits, until it goes on', async () => {
    const { sitting, pass, hear } = rig();
    await sitting.listen();
    pass(5);
    hear({ kind: 'started', timeSec: 4, cutSec: 3 });
    hear({ kind: 'waits', timeSec: 7 });
    expect(sitting.waits).toBe(true);
    hear({ kind: 'struck', id: 7, timeSec: 9, midi: 60, levelDb: -20, final: true });
    expect(sitting.waits).toBe(false);
  });

  it('is expected to be the exercise that is taken at the stand', async () => {
    const { sitting, log } = rig();
    await sitting.listen();
    sitting.choose({ key: 'G major', form: 'scale', hands: 'left', octaves: 1 });
    expect(log).toContain('expects G major');
    expect(sitting.plan.choice.key).toBe('G major');
  });

  it('is what a next step proposes once that is set up: a part, at its tempo, and the report makes room', async () => {
    const { sitting, log, pass, attempt } = rig();
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    log.length = 0;
    const practice = { fromStep: 0, toStep: 3, tempoBpm: 59 };
    sitting.setUp({ key: 'G major', form: 'scale', hands: 'left', octaves: 1 }, practice);
    expect(log).toEqual(['expects part', 'pulse 59', 'no click']);
    expect(sitting.plan.practice).toEqual(practice);
    expect([sitting.plan.choice.key, sitting.face]).toEqual(['G major', 'waiting']);
  });

  it('under way when listening is stopped is ended, kept and told', async () => {
    const { sitting, log, pass, hear } = rig();
    await sitting.listen();
    pass(5);
    hear({ kind: 'started', timeSec: 4, cutSec: 3 });
    pass(2);
    await sitting.stop();
    await settle();
    expect(sitting.phase).toBe('off');
    expect(log).toContain('keep 4.0 s');
    expect(sitting.told?.assessment).toBe(TOLD);
  });

  it('that cannot be analysed stays kept, and says so', async () => {
    const { sitting, log, pass, attempt } = rig({
      analyst: { analyse: () => Promise.reject(new Error('Something broke.')) },
    });
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    expect(sitting.trouble).toMatchObject({
      trouble: 'not-worked-out',
      because: { detail: expect.stringMatching(/Something broke/) as string },
    });
    expect(sitting.face).toBe('waiting');
    expect(log).toContain('keep 3.9 s');
  });

  it('told as another exercise is told anew under its own name in the journal', async () => {
    const { sitting, log, pass, attempt } = rig();
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    log.length = 0;
    await sitting.tellAs({ key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 });
    expect(log).toEqual(['analyse 3.9 s of D major at 80', 'expects D major', 'complete an id']);
    expect(sitting.plan.choice.key).toBe('D major');
  });

  it('told as another hand where the exercise is recognised leaves the next one to be recognised', async () => {
    const { sitting, log, pass, attempt } = rig();
    sitting.plan.recognise = true;
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    log.length = 0;
    await sitting.tellAs({ ...sitting.plan.choice, hands: 'left' });
    expect(log).toEqual([expect.stringContaining('analyse'), 'complete an id']);
    expect([sitting.plan.recognise, sitting.plan.choice.hands]).toEqual([true, 'left']);
  });

  /** Devices on which a page was closed in the middle of an attempt; `log` is told when it is forgotten. */
  function leftBehind(log: string[]): Partial<SittingDevices> {
    const forget = (): Promise<void> => {
      log.push('forgotten');
      return Promise.resolve();
    };
    const channels = [new Float32Array(48_000 * 2)];
    const left = {
      id: 'an id',
      channels,
      sampleRateHz: 48_000,
      about: { choice: null, targetBpm: 60 },
      forget,
    };
    return {
      unfinished: {
        begin: () => ({ id: 'another', add: () => undefined, end: () => undefined }),
        recover: () => Promise.resolve([left]),
      },
    };
  }

  it('left behind by a closed page is kept and told with a remark', async () => {
    const forgotten: string[] = [];
    const { sitting, log } = rig(leftBehind(forgotten));
    await sitting.recover();
    expect(log).toContain('keep 2.0 s');
    expect(log).toContain('analyse 2.0 s of anything at 60');
    expect(forgotten).toEqual(['forgotten']);
    expect(sitting.told?.sound).toMatchObject({ id: 'an id', remarks: [{ notice: 'page-closed' }] });
  });

  it('left behind by a page that had kept it already is only forgotten', async () => {
    const forgotten: string[] = [];
    const { sitting, devices, log } = rig(leftBehind(forgotten));
    Object.assign(devices.journal, { holds: ({ id }: Sound) => Promise.resolve(id === 'an id') });
    await sitting.recover();
    expect(log).toEqual([]);
    expect(forgotten).toEqual(['forgotten']);
  });
});

describe('trouble with the microphone', () => {
  const GONE = { trouble: { trouble: 'microphone-gone' }, lostSec: 0 } as const;

  it('that is gone ends the attempt under way; when it comes back, listening goes on', async () => {
    const { sitting, log, pass, hear, suffer, devicesChange } = rig();
    await sitting.listen();
    pass(5);
    hear({ kind: 'started', timeSec: 4, cutSec: 3 });
    pass(1);
    suffer({ kind: 'gone', ...GONE });
    await settle();
    expect(sitting.halted).toBe(true);
    expect(sitting.trouble).toEqual({ trouble: 'microphone-gone' });
    expect(sitting.phase).toBe('on');
    expect(log).toContain('keep 3.0 s');
    devicesChange();
    await settle();
    expect(sitting.halted).toBe(false);
    expect(sitting.trouble).toEqual({ trouble: 'microphone-back' });
    expect(log.filter((line) => line === 'open')).toHaveLength(2);
  });

  it('that lost sound in the middle is remarked on in the report of that attempt', async () => {
    const { sitting, pass, hear, suffer } = rig();
    await sitting.listen();
    pass(5);
    hear({ kind: 'started', timeSec: 4, cutSec: 3 });
    suffer({ kind: 'gap', trouble: { trouble: 'sound-lost', lostSec: 0.3 }, lostSec: 0.3 });
    pass(3);
    hear({ kind: 'ended', startSec: 3, endSec: 7.9, notes: 2 });
    await settle();
    expect(sitting.told?.sound.remarks).toEqual([{ notice: 'sound-lost', lostSec: 0.3 }]);
    expect(sitting.trouble).toMatchObject({ trouble: 'sound-lost' });
    expect(sitting.halted).toBe(false);
  });

  it('that is asleep is said, and goes on at a touch', async () => {
    const { sitting, log, suffer } = rig();
    await sitting.listen();
    suffer({ kind: 'asleep', ...GONE });
    expect(sitting.halted).toBe(true);
    await sitting.resume();
    expect(log).toContain('resume');
    suffer({ kind: 'back', ...GONE });
    expect(sitting.halted).toBe(false);
  });
});

describe('what the device itself makes sound', () => {
  it('is clicked until the first note where that is chosen, and rests after an attempt', async () => {
    const { sitting, log, pass, attempt, hear } = rig();
    sitting.change({ click: 'count-in' });
    await sitting.listen();
    expect(log).toContain('click');
    log.length = 0;
    pass(5);
    hear({ kind: 'struck', id: 0, timeSec: 4, midi: 60, levelDb: -20, final: false });
    expect(log).toEqual(['no click']);
    hear({ kind: 'withdrawn', id: 0 });
    expect(log).toEqual(['no click', 'click']);
    attempt(4, 1);
    await settle();
    expect(log.at(-1)).not.toBe('click');
    expect(log.filter((line) => line.endsWith('click')).at(-1)).toBe('no click');
  });

  it('is told to the ear: each click where it will come in', async () => {
    const { sitting, muted, pass, click } = rig();
    sitting.change({ click: 'throughout' });
    await sitting.listen();
    pass(2);
    const comesMs = performance.now() + 500;
    click(comesMs);
    expect(muted).toHaveLength(1);
    expect(muted[0]!.kind).toBe('click');
    expect(muted[0]!.fromSec).toBeGreaterThan(2.4);
    expect(muted[0]!.toSec).toBeLessThan(2.8);
  });

  it('is not listened to while it speaks', async () => {
    const { sitting, log, muted, pass, attempt, hear } = rig();
    sitting.change({ speak: true });
    await sitting.listen();
    pass(5);
    attempt(4, 0);
    await settle();
    expect(log.some((line) => line.startsWith('say '))).toBe(true);
    pass(0.1);
    hear({ kind: 'level', timeSec: 8.1, peakDb: -20, clipped: false, noiseDb: -70 });
    expect(muted.every(({ kind }) => kind === 'voice')).toBe(true);
    expect(muted.at(-1)!.toSec).toBeGreaterThan(8.3);
  });
});
