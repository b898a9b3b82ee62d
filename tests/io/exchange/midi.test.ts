import fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { encodeMidi } from '../../../src/io/exchange/index.ts';

const note = fc.record({
  timeSec: fc.double({ min: 0, max: 1_800, noNaN: true }),
  releaseSec: fc.option(fc.double({ min: 0, max: 1_800, noNaN: true })),
  midi: fc.integer({ min: 21, max: 108 }),
  levelDb: fc.double({ min: -60, max: 0, noNaN: true }),
});

/** The file's events with their times, by the file's own tempo and division (Standard MIDI Files 1.0). */
function timed(bytes: Uint8Array) {
  const { header, tracks } = parseMidi(bytes);
  let tick = 0;
  let tickSec = 0;
  return tracks[0]!.map((event) => {
    if (event.type === 'setTempo') tickSec = event.microsecondsPerBeat / 1e6 / header.ticksPerBeat!;
    tick += event.deltaTime;
    return { timeSec: tick * tickSec, event };
  });
}

describe('a MIDI file', () => {
  it('has the header of a Standard MIDI File 1.0: MThd, six bytes, format 0, one track, ticks a quarter', () => {
    const bytes = encodeMidi([{ timeSec: 0, releaseSec: 1, midi: 60, levelDb: -20 }]);
    expect(String.fromCharCode(...bytes.subarray(0, 4))).toBe('MThd');
    expect([...bytes.subarray(4, 12)]).toEqual([0, 0, 0, 6, 0, 0, 0, 1]);
    const division = (bytes[12]! << 8) | bytes[13]!;
    expect(division & 0x8000, 'top bit clear: ticks a quarter').toBe(0);
    expect(division).toBeGreaterThanOrEqual(9_600);
    expect(String.fromCharCode(...bytes.subarray(14, 18))).toBe('MTrk');
    expect([...bytes.subarray(-3)], 'end of track').toEqual([0xff, 0x2f, 0]);
  });

  it('has every onset at its time to 0.02 ms and its key', () => {
    fc.assert(
      fc.property(fc.array(note, { maxLength: 30 }), (notes) => {
        const ons = timed(encodeMidi(notes)).flatMap(({ timeSec, event }) =>
          event.type === 'noteOn' ? [{ timeSec, midi: event.noteNumber }] : [],
        );
        const wanted = [...notes].sort((a, b) => a.timeSec - b.timeSec);
        expect(ons).toHaveLength(wanted.length);
        ons.forEach(({ timeSec }, i) => expect(Math.abs(timeSec - wanted[i]!.timeSec)).toBeLessThan(0.00002));
        expect(ons.map(({ midi }) => midi).sort()).toEqual(wanted.map(({ midi }) => midi).sort());
      }),
    );
  });

  it('lets every key up again, and before it is struck once more', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(note, { maxLength: 30, selector: ({ timeSec }) => Math.round(timeSec * 10) }),
        (notes) => {
          const down = new Set<number>();
          for (const { event } of timed(encodeMidi(notes))) {
            if (event.type === 'noteOn') {
              expect(down.has(event.noteNumber)).toBe(false);
              down.add(event.noteNumber);
            }
            if (event.type === 'noteOff') down.delete(event.noteNumber);
          }
          expect(down.size).toBe(0);
        },
      ),
    );
  });

  it('strikes louder notes harder', () => {
    const notes = [-30, -20, -10].map((levelDb, i) => ({
      timeSec: i,
      releaseSec: null,
      midi: 60 + i,
      levelDb,
    }));
    const velocities = timed(encodeMidi(notes)).flatMap(({ event }) =>
      event.type === 'noteOn' ? [event.velocity] : [],
    );
    expect(velocities).toEqual([39, 64, 89]);
  });
});
