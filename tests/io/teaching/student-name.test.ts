import { describe, expect, it } from 'vitest';
import { studentIn } from '../../../src/io/teaching/student-name.ts';

describe('the name of a student in the path of a recording', () => {
  it.each([
    ['a folder below the one that was given', 'Week 12/Mara/d-major.m4a', 'Mara'],
    ['… and not a folder below that', 'Week 12/Mara/November/AUD-1.opus', 'Mara'],
    ['the first part of the name of a file', 'Mara - D major.m4a', 'Mara'],
    ['… in a folder of all', 'Week 12/Ilse - g moll.mp3', 'Ilse'],
    ['… parted by a line below', 'Jo_scale_left.wav', 'Jo'],
    ['… of two words', 'Mara Lind – triads.ogg', 'Mara Lind'],
    ['the folder, where the file is called by a messenger', 'Mara/AUD-20261101-WA0003.opus', 'Mara'],
    ['… by a recorder', 'Mara/recording (4).m4a', 'Mara'],
    ['… by a telephone', 'Ilse/Aufnahme - neu.m4a', 'Ilse'],
    ['… or by what was played', 'Mara/scale - right hand.wav', 'Mara'],
    ['… in German', 'Ilse/Tonleiter_links.wav', 'Ilse'],
    ['… or by its key', 'Jo/D-Dur - rechts.wav', 'Jo'],
    ['nothing where nothing names anybody', 'recording (4).m4a', ''],
    ['… a messenger alone', 'PTT-20261101-WA0003.opus', ''],
    ['… a date', '2026-11-01 - 17.40.m4a', ''],
    ['… one word', 'arpeggio.wav', ''],
    ['nothing of an empty path', '', ''],
    ['signs that are not seen are left out', 'Week/Ma\u202era\u0000/x.wav', 'Mara'],
  ])('is %s', (_, path, name) => {
    expect(studentIn(path)).toBe(name);
  });

  it('is never longer than a name', () => {
    expect(studentIn(`week/${'m'.repeat(500)}/x.wav`)).toHaveLength(60);
  });
});
