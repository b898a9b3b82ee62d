import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../src/engine/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import { Journal } from '../../../src/ui/attempt/journal.svelte.ts';
import { fileNameOf } from '../../../src/ui/kit/save.ts';
import { Parcel, type ParcelDevices } from '../../../src/ui/send/parcel.svelte.ts';
import { createSettings } from '../../../src/io/settings/index.ts';
import { tone } from '../../browser/student/made.ts';
import { NOW_MS } from '../../engine/standing/history.ts';
import { invent, INVENTED } from '../support/invent.ts';
import { storageIn } from '../../support/storage.ts';

const { exercise, report } = invent(INVENTED.lateThumb);

async function rig(more: Partial<ParcelDevices> = {}) {
  let clockMs = NOW_MS;
  const journal = new Journal(null, () => (clockMs += 1000));
  const ids: string[] = [];
  for (let attempt = 0; attempt < 3; attempt += 1) {
    const sound = {
      channels: [new Float32Array(480)],
      sampleRateHz: 48_000,
      name: 'your recording',
      recordedHere: true,
      remarks: [],
    };
    ids.push(await journal.keep(sound, { choice: exercise.choice, targetBpm: 80 }));
    if (attempt < 2) await journal.complete(ids.at(-1)!, { kind: 'report', report } as Assessment);
  }
  // The store of this journal keeps no sound: the first attempt has one all the same.
  const open = journal.open.bind(journal);
  Object.assign(journal, {
    open: async (id: string) => {
      const kept = await open(id);
      const sound = {
        channels: [new Float32Array(480)],
        sampleRateHz: 48_000,
        name: 'x',
        recordedHere: true,
        remarks: [],
      };
      return kept === null || id !== ids[0] ? kept : { ...kept, sound };
    },
  });
  const written: Review[] = [];
  const stored = new Map<string, string>();
  const devices: ParcelDevices = {
    encode: () => Promise.resolve(tone(0.1)),
    write: (made) => {
      written.push(made);
      return Promise.resolve(new Blob(['zip']));
    },
    share: { can: () => true, share: () => Promise.resolve(true) },
    settings: createSettings(() => storageIn(stored)),
    newId: () => 'an id',
    ...more,
  };
  return { parcel: new Parcel(devices, journal), again: () => new Parcel(devices, journal), ids, written };
}

const NOT_MADE = {
  trouble: 'file-not-made',
  because: { trouble: 'unforeseen', detail: 'It is too large.' },
} as const;

describe('attempts for a teacher', () => {
  it('go into one file in order of time, with reports, sound where there is any, and her words', async () => {
    const { parcel, ids, written } = await rig();
    parcel.begin([ids[1]!]);
    parcel.toggle(ids[0]!);
    parcel.student = ' Mira Ohm ';
    parcel.words = 'The left hand was hard.\n';
    await parcel.make();
    expect(parcel.trouble).toBeNull();
    expect(parcel.file?.name).toBe('attempts-mira-ohm-2026-11-25.zip');
    expect(written).toHaveLength(1);
    expect(written[0]).toMatchObject({
      kind: 'attempts',
      id: 'an id',
      student: 'Mira Ohm',
      teacher: '',
      words: 'The left hand was hard.',
      assignment: [],
      attempts: [
        { id: ids[0], report, sound: tone(0.1), remarks: [], corrections: [], recognisedAs: null },
        { id: ids[1], report, sound: null },
      ],
    });
  });

  it('travel without sound where she wants it so', async () => {
    const { parcel, ids, written } = await rig();
    parcel.begin(ids.slice(0, 2));
    parcel.withSound = false;
    await parcel.make();
    expect(written[0]!.attempts.map(({ sound }) => sound)).toEqual([null, null]);
  });

  it('leave out what has no report', async () => {
    const { parcel, ids, written } = await rig();
    parcel.begin(ids);
    await parcel.make();
    expect(written[0]!.attempts.map(({ id }) => id)).toEqual(ids.slice(0, 2));
  });

  it('are packed anew when anything is changed, also while the file is made', async () => {
    const { parcel, ids } = await rig();
    parcel.begin(ids.slice(0, 1));
    await parcel.make();
    expect(parcel.file).not.toBeNull();
    parcel.toggle(ids[1]!);
    expect(parcel.file).toBeNull();
    const making = parcel.make();
    parcel.changed();
    await making;
    expect([parcel.file, parcel.progress]).toEqual([null, null]);
  });

  it('are not saved as they were before a change, even where the file was nearly made', async () => {
    let written: (zip: Blob) => void = () => undefined;
    const { parcel, ids } = await rig({ write: () => new Promise((resolve) => (written = resolve)) });
    parcel.begin(ids.slice(0, 1));
    const making = parcel.make();
    await expect.poll(() => parcel.progress).toBe(1);
    parcel.changed();
    written(new Blob(['zip']));
    await making;
    expect(parcel.file).toBeNull();
  });

  it('stay where they are when the file cannot be made, and it is said why', async () => {
    const { parcel, ids } = await rig({ write: () => Promise.reject(new Error('It is too large.')) });
    parcel.begin(ids.slice(0, 1));
    await parcel.make();
    expect(parcel.file).toBeNull();
    expect(parcel.trouble).toEqual(NOT_MADE);
    expect(parcel.chosen).toEqual(ids.slice(0, 1));
  });

  it('are handed to the system at a touch; where it fails, the file stays', async () => {
    const { parcel, ids } = await rig();
    parcel.begin(ids.slice(0, 1));
    expect([parcel.canShare, await parcel.share()]).toEqual([false, false]);
    await parcel.make();
    expect([parcel.canShare, await parcel.share()]).toEqual([true, true]);
    const failing = await rig({
      share: { can: () => true, share: () => Promise.reject(new Error('no')) },
    });
    failing.parcel.begin(failing.ids.slice(0, 1));
    await failing.parcel.make();
    expect(await failing.parcel.share()).toBe(false);
    expect(failing.parcel.trouble).toMatchObject({ trouble: 'not-passed-on' });
    expect(failing.parcel.file).not.toBeNull();
  });

  it('are chosen one by one, in and out, also when nothing was chosen before', async () => {
    const { parcel, ids } = await rig();
    expect(parcel.chosen).toBeNull();
    parcel.toggle(ids[1]!);
    parcel.toggle(ids[0]!);
    expect(parcel.chosen).toEqual([ids[1], ids[0]]);
    parcel.toggle(ids[1]!);
    expect(parcel.chosen).toEqual([ids[0]]);
  });

  it('tell how far the file is, attempt by attempt, and no more when it is there', async () => {
    const seen: (number | null)[] = [];
    const { parcel, ids } = await rig({
      encode: () => {
        seen.push(parcel.progress);
        return Promise.resolve(tone(0.1));
      },
      write: () => {
        seen.push(parcel.progress);
        return Promise.resolve(new Blob(['zip']));
      },
    });
    parcel.begin(ids.slice(0, 2));
    // Only the first has a sound: nothing is done before it, both before the file is written.
    const making = parcel.make();
    expect(parcel.progress).toBe(0);
    await making;
    expect(seen).toEqual([0, 1]);
    expect(parcel.progress).toBeNull();
    expect([parcel.file?.type, parcel.file?.size]).toEqual(['application/zip', 3]);
  });

  it('drop a trouble when anything is changed, and tell none of a file that nobody wants any more', async () => {
    let fail: (error: Error) => void = () => undefined;
    const { parcel, ids } = await rig({ write: () => new Promise((_, reject) => (fail = reject)) });
    parcel.begin(ids.slice(0, 1));
    const making = parcel.make();
    await expect.poll(() => parcel.progress).toBe(1);
    parcel.begin(ids.slice(0, 2));
    fail(new Error('It is too large.'));
    await making;
    expect([parcel.trouble, parcel.file, parcel.progress]).toEqual([null, null, null]);
    const again = parcel.make();
    await expect.poll(() => parcel.progress).toBe(1);
    fail(new Error('It is too large.'));
    await again;
    expect([parcel.trouble, parcel.progress]).toEqual([NOT_MADE, null]);
    parcel.changed();
    expect(parcel.trouble).toBeNull();
  });

  it('have the moment at which the file was made, in whole ms, and the time and name of each', async () => {
    const { parcel, ids, written } = await rig();
    parcel.begin(ids.slice(0, 1));
    await parcel.make();
    const [made] = written;
    expect(Number.isInteger(made!.madeMs)).toBe(true);
    expect(made!.madeMs).toBeGreaterThan(made!.attempts[0]!.whenMs!);
    expect(made!.attempts[0]!.name).toBe('your recording');
  });

  it('leave out what is not there, and can be none', async () => {
    const { parcel, ids, written } = await rig();
    parcel.begin(['nobody', ids[1]!]);
    await parcel.make();
    parcel.begin([]);
    await parcel.make();
    expect(written.map(({ attempts }) => attempts.map(({ id }) => id))).toEqual([[ids[1]], []]);
  });

  it('forget all when she leaves; a remembered name that is no text is none', async () => {
    const { parcel, ids } = await rig();
    parcel.begin(ids.slice(0, 1));
    await parcel.make();
    parcel.leave();
    expect([parcel.chosen, parcel.file, await parcel.share()]).toEqual([null, null, false]);
    const { parcel: other } = await rig({
      settings: createSettings(() => ({ ...storageIn(new Map()), getItem: () => '{"name":7}' })),
    });
    expect(other.student).toBe('');
  });

  it('are not passed on where the system cannot, or the sheet was left', async () => {
    const { parcel, ids } = await rig({ share: { can: () => false, share: () => Promise.resolve(false) } });
    parcel.begin(ids.slice(0, 1));
    await parcel.make();
    expect([parcel.canShare, await parcel.share(), parcel.trouble]).toEqual([false, false, null]);
  });

  it('carry her name, which is remembered; her words are not', async () => {
    const { parcel, again, ids } = await rig();
    parcel.begin(ids);
    parcel.student = 'Mira';
    parcel.words = 'Hello';
    parcel.leave();
    expect([parcel.chosen, parcel.words]).toEqual([null, '']);
    expect(again().student).toBe('Mira');
  });
});

describe('the name of the file', () => {
  it.each([
    ['Mira Ohm', 'attempts-mira-ohm-2026-11-25.zip'],
    ['', 'attempts-2026-11-25.zip'],
    ['../../Zoë/“x”', 'attempts-zoë-x-2026-11-25.zip'],
    ['***', 'attempts-2026-11-25.zip'],
  ])('of %s', (student, name) => {
    expect(fileNameOf(['attempts', student.toLowerCase()], NOW_MS, 'zip')).toBe(name);
  });
});
