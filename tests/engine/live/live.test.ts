import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLiveListener } from '../../../src/engine/index.ts';
import type { LiveEvent, LiveOptions, OwnSound } from '../../../src/engine/index.ts';
import { playStrings } from '../listen/strings.ts';
import type { StringStroke } from '../listen/strings.ts';

const RATE = 44_100;
const scale: readonly StringStroke[] = [60, 62, 64, 65, 67, 69, 71, 72].map((midi, i) => ({
  timeSec: 1.5 + 0.3 * i,
  midi,
}));
const played = playStrings(scale, { seconds: 8, rateHz: RATE });

/** One sound → everything told of it, each with the second of sound that had come by then. */
function follow(
  sound: Float32Array,
  options: Partial<LiveOptions> = {},
  blocks: readonly number[] = [441],
  own: readonly OwnSound[] = [],
): { readonly event: LiveEvent; readonly atSec: number }[] {
  const ear = createLiveListener({ sampleRateHz: RATE, channels: 1 }, options);
  for (const one of own) ear.mute(one);
  const told: { event: LiveEvent; atSec: number }[] = [];
  for (let at = 0, turn = 0; at < sound.length; turn++) {
    const to = at + blocks[turn % blocks.length]!;
    for (const event of ear.push([sound.subarray(at, to)])) told.push({ event, atSec: to / RATE });
    at = to;
  }
  for (const event of ear.flush()) told.push({ event, atSec: Infinity });
  return told;
}
type Struck = Extract<LiveEvent, { kind: 'struck' }>;
const strucks = (told: readonly { readonly event: LiveEvent; readonly atSec: number }[]) =>
  told.filter((one): one is { event: Struck; atSec: number } => one.event.kind === 'struck');
const finals = (told: readonly { readonly event: LiveEvent; readonly atSec: number }[]): Struck[] =>
  strucks(told).flatMap(({ event }) => (event.final ? [event] : []));
const kinds = (told: readonly { readonly event: LiveEvent }[], kind: LiveEvent['kind']): LiveEvent[] =>
  told.flatMap(({ event }) => (event.kind === kind ? [event] : []));

describe('the live ear', () => {
  const told = follow(played);

  it('hears every key of a scale, each onset within 10 ms', () => {
    const notes = finals(told);
    expect(notes.map(({ midi }) => midi)).toEqual(scale.map(({ midi }) => midi));
    notes.forEach(({ timeSec }, i) => expect(Math.abs(timeSec - scale[i]!.timeSec)).toBeLessThan(0.01));
  });

  it('guesses each within 150 ms of its sound, certain of it within half a second', () => {
    for (const { midi, timeSec } of scale) {
      const of = strucks(told).filter(
        ({ event }) => event.midi === midi && Math.abs(event.timeSec - timeSec) < 0.05,
      );
      expect(of.find(({ event }) => !event.final)!.atSec - timeSec).toBeLessThan(0.15);
      expect(of.find(({ event }) => event.final)!.atSec - timeSec).toBeLessThan(0.5);
    }
  });

  it('tells each note under one id, at most once as a guess and once for good; nothing is told after that', () => {
    const known = new Map<number, 'guessed' | 'over'>();
    for (const { event } of told) {
      if (event.kind === 'withdrawn') {
        expect(known.get(event.id)).toBe('guessed');
        known.set(event.id, 'over');
      }
      if (event.kind !== 'struck') continue;
      expect(known.get(event.id)).toBe(event.final && known.has(event.id) ? 'guessed' : undefined);
      known.set(event.id, event.final ? 'over' : 'guessed');
    }
    expect([...known.values()].filter((state) => state === 'guessed')).toEqual([]);
  });

  it('begins the attempt at its first note with a second before it', () => {
    expect(kinds(told, 'started')).toMatchObject([{ cutSec: expect.closeTo(0.5, 1) as number }]);
  });

  it('ends it within 1.2 s of the last note of the exercise that was chosen', () => {
    const upAndDown = playStrings(
      [...scale, ...scale.slice(0, -1).reverse()].map(({ midi }, i) => ({ timeSec: 1.5 + 0.3 * i, midi })),
      { seconds: 9, rateHz: RATE },
    );
    const expected = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;
    const [ended, ...others] = follow(upAndDown, { expected }).filter(({ event }) => event.kind === 'ended');
    const lastSec = 1.5 + 0.3 * 14;
    expect(others).toEqual([]);
    expect(ended!.event).toMatchObject({ notes: 15, startSec: expect.closeTo(0.5, 1) as number });
    expect(ended!.atSec).toBeLessThan(lastSec + 1.2);
  });

  it('tells the level ten times a second, the noise after a second', () => {
    const levels = kinds(told, 'level') as Extract<LiveEvent, { kind: 'level' }>[];
    expect(levels.filter(({ timeSec }) => timeSec <= 8.01)).toHaveLength(80);
    expect(levels[4]!.noiseDb).toBeNull();
    expect(levels[20]!.noiseDb).toBeLessThan(-50);
    expect(Math.max(...levels.map(({ peakDb }) => peakDb))).toBeCloseTo(
      20 * Math.log10(played.reduce((most, value) => Math.max(most, Math.abs(value)), 0)),
      0,
    );
    expect(levels.some(({ clipped }) => clipped)).toBe(false);
  });

  it('tells the same however the sound is cut into blocks', () => {
    const all = told.map(({ event }) => event);
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 20_000 }), { minLength: 1, maxLength: 8 }),
        (lengths) => {
          expect(follow(played, {}, lengths).map(({ event }) => event)).toEqual(all);
        },
      ),
      { numRuns: 3 },
    );
  });

  it('ends an attempt under way when it is flushed', () => {
    const cut = follow(played.subarray(0, 3 * RATE));
    expect(kinds(cut, 'ended')).toHaveLength(1);
  });

  it('passes over what sounds while the device itself speaks, but not over a note struck at its click', () => {
    const spoken = follow(played, {}, [441], [{ fromSec: 0, toSec: 2, kind: 'voice' }]);
    expect(finals(spoken).map(({ midi }) => midi)).toEqual(scale.slice(2).map(({ midi }) => midi));
    const clicked = follow(played, {}, [441], [{ fromSec: 1.49, toSec: 1.51, kind: 'click' }]);
    expect(finals(clicked).map(({ midi }) => midi)).toEqual(scale.map(({ midi }) => midi));
  });

  it('starts from the tuning that it is told', () => {
    const flat = playStrings(
      scale.map((stroke) => ({ ...stroke, cents: -70 })),
      { seconds: 7, rateHz: RATE },
    );
    const piano = {
      version: 1,
      tuningCents: { value: -70, plusMinus: 1, count: 20 },
      keys: {},
    } as const;
    expect(finals(follow(flat, { piano })).map(({ midi }) => midi)).toEqual(scale.map(({ midi }) => midi));
  });

  it('chooses the channel that carries sound, and takes samples that are no numbers for silence', () => {
    const ear = createLiveListener({ sampleRateHz: RATE, channels: 2 });
    const bad = new Float32Array(played.length).fill(NaN);
    const events = [...ear.push([bad, played]), ...ear.flush()];
    expect(events.filter((event) => event.kind === 'struck' && event.final)).toHaveLength(scale.length);
  });

  it('says which channels it was promised', () => {
    const ear = createLiveListener({ sampleRateHz: RATE, channels: 2 });
    expect(() => ear.push([played])).toThrow(/1 channels where 2/);
    expect(() => createLiveListener({ sampleRateHz: RATE, channels: 0 })).toThrow(/channels=0/);
  });
});

describe('a piano in another tuning than the one known', () => {
  it.each([-35, 20])(
    'is heard, its first notes perhaps late but with their sound (%i cents, −10 known)',
    (cents) => {
      const other = playStrings(
        scale.map((stroke) => ({ ...stroke, cents })),
        { seconds: 7, rateHz: RATE },
      );
      const told = follow(other, {
        piano: { version: 1, tuningCents: { value: -10, plusMinus: 1, count: 20 }, keys: {} },
      });
      const inTime = [...finals(told)].sort((a, b) => a.timeSec - b.timeSec);
      expect(inTime.map(({ midi }) => midi)).toEqual(scale.map(({ midi }) => midi));
      expect(kinds(told, 'started')[0]).toMatchObject({ cutSec: expect.closeTo(0.5, 1) });
    },
  );
});
