import { describe, expect, it } from 'vitest';
import { openArchive } from '../../../src/io/archive/index.ts';
import { readReview, writeReview } from '../../../src/io/review/index.ts';
import { writeFolder } from '../../../src/io/teaching/index.ts';
import { dueReviews, packAll } from '../../../src/ui/teacher/state/all-reviews.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { devicesWith, FILE, found, MemoryStore, settled, SlowSorters, SORTED } from './rig.ts';

/** Two of one name, one whose name no file could have, and one who has sent nothing that was heard. */
const SENT = ['w/Mara/1.wav', 'w/Mara/2.wav', 'w/Jörg/1.wav', 'w/Ilse/1.wav', 'w/Nils/1.wav'];

async function heard() {
  const store = new MemoryStore();
  const sorters = new SlowSorters();
  const teaching = new Teaching(devicesWith(store, sorters, { writeReview }));
  await teaching.add(SENT.map((path) => ({ path, blob: FILE(path), writtenMs: null })));
  await settled();
  for (const path of SENT) {
    sorters.release(path, SORTED({ ...found(0), sound: { bytes: new Uint8Array(0), mime: 'audio/webm' } }));
    await settled();
  }
  store.sounds.clear();
  const { lists } = teaching;
  const [nils, ilse] = ['Nils', 'Ilse'].map((name) => lists.students.find((one) => one.name === name)!);
  await lists.changeStudent(ilse!.id, () => ({ name: 'Mara' }));
  await lists.changePlayings(
    lists.playings.filter(({ studentId }) => studentId !== nils!.id).map(({ id }) => id),
    () => ({ heardMs: 1 }),
  );
  return teaching;
}

describe('reviews for all at once', () => {
  it('are one file for each student with hers alone in it, all in one zip', async () => {
    const teaching = await heard();
    const due = dueReviews(teaching);
    expect(due.map(({ student, attempts }) => [student.name, attempts.length])).toEqual([
      ['Jörg', 1],
      ['Mara', 2],
      ['Mara', 1],
    ]);
    const packed = await packAll(teaching, due, { teacher: 'Ms Ley', word: 'review' });
    const folder = await writeFolder(packed.map(({ fileName, file }) => ({ name: fileName, file })));
    const members = await openArchive(folder);
    expect(members.map(({ name }) => name.replace(/\d{4}-\d\d-\d\d/, 'DAY'))).toEqual([
      '1-Joerg-review-DAY.zip',
      '2-Mara-review-DAY.zip',
      '3-Mara-review-DAY.zip',
    ]);
    for (const [at, { read }] of members.entries()) {
      const review = await readReview(new Blob([await read()]));
      const { student, attempts } = due[at]!;
      expect([review.student, review.teacher]).toEqual([student.name, 'Ms Ley']);
      expect(review.attempts.map(({ id }) => id)).toEqual(attempts.map(({ id }) => id));
    }
  });
});
