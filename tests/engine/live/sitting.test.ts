import { describe, expect, it } from 'vitest';
import { createLiveListener, listen } from '../../../src/engine/index.ts';
import type { LiveEvent } from '../../../src/engine/index.ts';
import { otherSound } from '../../support/other-sounds.ts';
import type { OtherSound } from '../../support/other-sounds.ts';
import { render } from '../../support/render.ts';
import type { RenderSpec } from '../../support/render.ts';
import { joinSession } from '../../support/session.ts';

const HOME: NonNullable<RenderSpec['home']> = { tuningCents: -22, noises: [], peakDb: -8 };
const attempt = (seed: number, exercise: RenderSpec['exercise'], bpm: number) =>
  render({ seed, piano: 'dev', exercise, student: { bpm }, home: HOME });

const attempts = await Promise.all([
  attempt(4, { key: 'D major', form: 'scale', hands: 'right', octaves: 1 }, 100),
  attempt(2, { key: 'G major', form: 'triads', hands: 'left', octaves: 1 }, 55),
  attempt(3, { key: 'A minor', form: 'arpeggio', hands: 'right', octaves: 2 }, 110),
]);
const sitting = joinSession(attempts, { seed: 5, pauseSec: { least: 6, most: 9 } });

function follow(channel: Float32Array, sampleRateHz: number): LiveEvent[] {
  const ear = createLiveListener({ sampleRateHz, channels: 1 });
  const events: LiveEvent[] = [];
  for (let at = 0; at < channel.length; at += 441) events.push(...ear.push([channel.subarray(at, at + 441)]));
  return [...events, ...ear.flush()];
}
type Ended = Extract<LiveEvent, { kind: 'ended' }>;
const ended = (events: readonly LiveEvent[]): Ended[] => events.filter((event) => event.kind === 'ended');

describe('a sitting at the piano: attempts with talk, knocks and pages between', () => {
  const events = follow(sitting.channel, sitting.sampleRateHz);

  it('is cut into its attempts: none missed, split or invented, each with all its notes', () => {
    expect(ended(events)).toHaveLength(attempts.length);
    ended(events).forEach(({ startSec, endSec }, i) => {
      const { notes } = sitting.attempts[i]!;
      expect(startSec).toBeLessThan(notes[0]!.timeSec - 0.1);
      expect(startSec).toBeGreaterThan(notes[0]!.timeSec - 4);
      expect(endSec).toBeGreaterThan(notes.at(-1)!.timeSec + 0.8);
    });
  });

  it('gives attempts whose sound holds the notes that the attempt alone holds, onset by onset', () => {
    ended(events).forEach(({ startSec, endSec }, i) => {
      const cut = sitting.channel.slice(
        Math.round(startSec * sitting.sampleRateHz),
        Math.round(endSec * sitting.sampleRateHz),
      );
      const heard = listen({ channels: [cut], sampleRateHz: sitting.sampleRateHz });
      const { notes } = sitting.attempts[i]!;
      const own = heard.notes.filter(({ timeSec }) => timeSec + startSec > notes[0]!.timeSec - 0.05);
      const inOrder = (all: readonly { timeSec: number; midi: number }[]): number[] =>
        all.map(({ midi }) => midi).sort((a, b) => a - b);
      expect(inOrder(own)).toEqual(inOrder(notes));
    });
  });

  it.each<OtherSound>(['speech', 'knocks', 'claps', 'pages', 'dishes', 'noise', 'silence'])(
    '%s alone is no attempt, and nothing of it is told as certain',
    (kind) => {
      const { channels, sampleRateHz } = otherSound(kind, 12, 31);
      const told = follow(channels[0]!, sampleRateHz);
      expect(told.filter((event) => event.kind === 'started')).toEqual([]);
      expect(told.filter((event) => event.kind === 'struck' && event.final).length).toBeLessThan(3);
    },
  );
});
