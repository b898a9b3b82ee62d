import fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { encodeMidi, playedMidi } from '../../../src/io/exchange/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

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

/** Events of all tracks with their times by the tempo map of the first (Standard MIDI Files 1.0, format 1). */
function timedByMap(bytes: Uint8Array) {
  const { header, tracks } = parseMidi(bytes);
  const withTicks = tracks.map((events) => {
    let tick = 0;
    return events.map((event) => ({ tick: (tick += event.deltaTime), event }));
  });
  let [at, sec, tickSec] = [0, 0, 0];
  const map = withTicks[0]!.flatMap(({ tick, event }) => {
    if (event.type !== 'setTempo') return [];
    sec += (tick - at) * tickSec;
    at = tick;
    tickSec = event.microsecondsPerBeat / 1e6 / header.ticksPerBeat!;
    return [{ tick, sec, tickSec }];
  });
  const timeOf = (tick: number): number => {
    const from = map.findLast((one) => one.tick <= tick)!;
    return from.sec + (tick - from.tick) * from.tickSec;
  };
  return {
    header,
    tracks: withTicks.map((events) => events.map((one) => ({ ...one, timeSec: timeOf(one.tick) }))),
  };
}

const utf8 = (text: string): string =>
  new TextDecoder().decode(Uint8Array.from(text, (letter) => letter.charCodeAt(0)));

describe('what was played, as a MIDI file', () => {
  const { report, exercise } = invent(INVENTED.together);
  const names = { title: 'C♯-Moll · Übung', hands: { left: 'Linke Hand', right: 'Rechte Hand' } };
  const { header, tracks } = timedByMap(playedMidi(report, exercise, names));
  const ticksABeat = header.ticksPerBeat!;

  it('has its title in UTF-8, and a track for each hand under its name', () => {
    const called = tracks.map((events) =>
      events.flatMap(({ event }) => (event.type === 'trackName' ? [utf8(event.text)] : [])),
    );
    expect([header.format, ...called]).toEqual([1, ['C♯-Moll · Übung'], ['Rechte Hand'], ['Linke Hand']]);
  });

  it('has every note at its time to 0.05 ms, on the track of its hand', () => {
    for (const [at, hand] of [
      [1, 'right'],
      [2, 'left'],
    ] as const) {
      const ons = tracks[at]!.filter(({ event }) => event.type === 'noteOn');
      const wanted = report.notes.filter((note) => (note.hand ?? 'right') === hand);
      expect(ons).toHaveLength(wanted.length);
      const times = wanted.map(({ timeSec }) => timeSec).sort((a, b) => a - b);
      ons.forEach(({ timeSec }, one) => expect(Math.abs(timeSec - times[one]!)).toBeLessThan(0.00005));
    }
  });

  it('counts the bars as they were played: each step of a whole beat is struck on its beat, the first on a first', () => {
    const ons = tracks.slice(1).flatMap((events) => events.filter(({ event }) => event.type === 'noteOn'));
    const nearest = (tick: number): number => Math.min(...ons.map((one) => Math.abs(one.tick - tick)));
    const first = Math.min(...ons.map(({ tick }) => tick));
    expect(Math.abs(first - 4 * ticksABeat)).toBeLessThan(0.1 * ticksABeat);
    for (const { beat } of exercise.steps.filter((step) => Number.isInteger(step.beat)))
      expect(nearest((4 + beat) * ticksABeat), `beat ${beat}`).toBeLessThan(0.2 * ticksABeat);
  });

  it('has its key and its bars: four flats and minor for F minor, 12/8 for three notes a beat', () => {
    const meta = (made: ReturnType<typeof invent>) =>
      timedByMap(playedMidi(made.report, made.exercise, names)).tracks[0]!.flatMap(({ event }) =>
        event.type === 'keySignature' || event.type === 'timeSignature' ? [event] : [],
      );
    const choice = { key: 'F minor', form: 'broken-triads', hands: 'right', octaves: 1 } as const;
    expect(meta(invent({ choice }))).toEqual([
      expect.objectContaining({ type: 'timeSignature', numerator: 12, denominator: 8 }),
      expect.objectContaining({ type: 'keySignature', key: -4, scale: 1 }),
    ]);
  });
});
