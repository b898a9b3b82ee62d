import { describe, expect, it } from 'vitest';
import type { LiveEvent, RoomCheck } from '../../../src/engine/index.ts';
import { createSettings } from '../../../src/io/settings/index.ts';
import { Room } from '../../../src/ui/sitting/state/room.svelte.ts';
import { ThisPiano } from '../../../src/ui/sitting/state/this-piano.ts';
import { rig, settle } from './rig.ts';

const PIANO = { version: 1, tuningCents: { value: -12, plusMinus: 1, count: 3 }, keys: {} } as const;
const GOOD: RoomCheck = {
  silence: { noiseDb: -70, hum: null },
  notes: [],
  findings: [],
  piano: PIANO,
};

/** A room with invented devices; time goes on in tenths of a second. */
function place() {
  const { devices, hear, pass, suffer, log } = rig();
  const asked: { readonly silenceSec: number; readonly playedSec: number }[] = [];
  const piano = new ThisPiano(
    createSettings(() => {
      throw new Error('closed');
    }),
  );
  const taught: unknown[] = [];
  piano.learn = (profile) => void taught.push(profile);
  const seconds = ({ channels }: { readonly channels: readonly Float32Array[] }): number =>
    channels[0]!.length / 48_000;
  const room = new Room({
    openMicrophone: devices.openMicrophone,
    openLiveListener: devices.openLiveListener,
    piano,
    analyst: {
      checkRoom: (silence, played) => {
        asked.push({ silenceSec: seconds(silence), playedSec: seconds(played) });
        return Promise.resolve(GOOD);
      },
    },
  });
  let nowSec = 0;
  const goOn = (sec: number): void => {
    for (const endSec = nowSec + sec; nowSec < endSec - 1e-6;) {
      pass(0.1);
      nowSec += 0.1;
      hear({ kind: 'level', timeSec: nowSec, peakDb: -40, clipped: false, noiseDb: null } as LiveEvent);
    }
  };
  const strike = (midi: number, final = true): void =>
    hear({ kind: 'struck', id: midi, timeSec: nowSec, midi, levelDb: 0, final });
  return { room, goOn, strike, suffer, asked, taught, log };
}

describe('the room check', () => {
  it('is silent for three seconds, asks for three notes in turn, and learns the piano', async () => {
    const { room, goOn, strike, asked, taught, log } = place();
    await room.begin(null);
    expect(room.step).toEqual({ kind: 'silence', leftSec: 3 });
    goOn(2);
    expect(room.step).toEqual({ kind: 'silence', leftSec: 2 });
    goOn(2);
    for (const [asks, midi] of [
      ['low', 36],
      ['middle', 60],
      ['high', 84],
    ] as const) {
      expect(room.step).toEqual({ kind: 'note', asked: asks });
      goOn(1);
      strike(midi);
      goOn(1.5);
    }
    await settle();
    expect(room.step).toEqual({ kind: 'done', check: GOOD });
    expect(asked).toHaveLength(1);
    expect(asked[0]!.silenceSec).toBeCloseTo(3, 6);
    expect(asked[0]!.playedSec).toBeGreaterThan(7);
    expect(taught).toEqual([PIANO]);
    expect(log.at(-1)).toBe('close');
  });

  it('does not take a guess for the note that it asked for', async () => {
    const { room, goOn, strike } = place();
    await room.begin(null);
    goOn(4);
    strike(36, false);
    goOn(3);
    expect(room.step).toEqual({ kind: 'note', asked: 'low' });
  });

  it('goes on without a note that never comes', async () => {
    const { room, goOn, asked } = place();
    await room.begin(null);
    goOn(17);
    await settle();
    expect(room.step.kind).toBe('done');
    expect(asked).toHaveLength(1);
  });

  it('that loses its microphone says so and lets it go', async () => {
    const { room, goOn, suffer, log } = place();
    await room.begin(null);
    goOn(1);
    suffer({ kind: 'gone', trouble: { trouble: 'microphone-gone' }, lostSec: 0 });
    await settle();
    expect(room.step.kind).toBe('off');
    expect(room.trouble).toEqual({ trouble: 'microphone-gone' });
    expect(log.at(-1)).toBe('close');
  });

  it('left early closes the microphone and judges nothing', async () => {
    const { room, goOn, asked, log } = place();
    await room.begin(null);
    goOn(5);
    await room.leave();
    expect(room.step.kind).toBe('off');
    expect(log.at(-1)).toBe('close');
    expect(asked).toEqual([]);
  });
});
