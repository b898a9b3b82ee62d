import type { AttemptSummary, ExerciseChoice } from '../../../src/engine/index.ts';
import type { GivenFile, Playing, Student } from '../../../src/io/teaching/index.ts';

const WEEK_MS = 7 * 24 * 3600 * 1000;
const NAMES =
  'Ada Bo Cem Dana Elif Finn Gustav Hana Ilse Jonas Kofi Lena Mara Nils Odile Pia Quinn Rosa Sami Tomke'.split(
    ' ',
  );
const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
  { key: 'E minor', form: 'scale', hands: 'left', octaves: 2 },
  { key: 'F major', form: 'progression', hands: 'together', octaves: 1 },
];

/** A class that has sent `each` recordings a student over the last weeks, heard in part: invented figures, without sound. */
export function inventedClass(size: number, each: number, nowMs: number) {
  const students: Student[] = [];
  const files: GivenFile[] = [];
  const playings: Playing[] = [];
  for (let at = 0; at < size; at++) {
    const id = `s${String(at).padStart(3, '0')}`;
    const name = `${NAMES[at % NAMES.length]!}${at < NAMES.length ? '' : ` ${String.fromCharCode(65 + (at % 26))}.`}`;
    students.push({ id, name, words: '', message: '', assignment: [], sent: [], deletedMs: null });
    for (let nth = 0; nth < each; nth++) {
      const whenMs = nowMs - ((at * 3 + nth * 2) % 8) * WEEK_MS - 3_600_000;
      const fileId = `f${id}-${nth}`;
      const isEmpty = at % 9 === 4 && nth === 0;
      files.push({
        id: fileId,
        path: `Week/${name}/${nth}.m4a`,
        studentId: id,
        addedMs: whenMs,
        writtenMs: whenMs,
        bytes: 400_000,
        state: 'sorted',
        reason: '',
        remarks: [],
        deletedMs: null,
        ...(isEmpty && { untold: { notice: 'speech' as const, places: 2 } }),
      });
      if (!isEmpty) playings.push(playingOf(`p${id}-${nth}`, fileId, id, whenMs, at * each + nth));
    }
  }
  return { students, files, playings };
}

function playingOf(id: string, fileId: string, studentId: string, whenMs: number, nth: number): Playing {
  const exercise = EXERCISES[nth % EXERCISES.length]!;
  const summary: AttemptSummary = {
    exercise,
    targetBpm: null,
    expected: 29,
    wrong: nth % 7 === 3 ? 3 : 0,
    missed: nth % 11 === 5 ? 1 : 0,
    extra: 0,
    unsure: 0,
    evennessPercent: 5 + (nth % 5) * 2,
    tempoBpm: 60 + (nth % 30),
    lateCrossings: nth % 4 === 1 ? 2 : 0,
    worstCrossingMs: nth % 4 === 1 ? 90 : 10,
    chordSpreadMs: null,
    handsApartMs: null,
    situation: 'even',
  };
  return {
    id,
    fileId,
    studentId,
    addedMs: whenMs,
    whenMs,
    name: `${nth}.m4a`,
    startSec: 0,
    endSec: 20,
    recognition: { choice: exercise, confidence: 0.99, octaveShift: 0, alternatives: [] },
    chosen: null,
    summary,
    evennessPlusMinus: 0.6,
    verdict: 'Every note was right, and it was even.',
    reason: '',
    heardMs: nth % 3 === 0 ? whenMs : null,
    answeredMs: nth % 5 === 4 ? whenMs : null,
    remarks: nth % 6 === 0 ? 1 : 0,
    soundBytes: 0,
    deletedMs: null,
  };
}
