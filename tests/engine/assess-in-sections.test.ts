import { beforeAll, describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import { assessRecording, createListener, listenAndKeep, listenInSections } from '../../src/engine/index.ts';
import type { FoundAttempt, Section } from '../../src/engine/index.ts';
import { render } from '../support/render.ts';
import { joinSession } from '../support/session.ts';
import type { Session } from '../support/session.ts';

const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'D major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'F minor', form: 'arpeggio', hands: 'left', octaves: 2 },
  { key: 'A major', form: 'triads', hands: 'right', octaves: 1 },
  { key: 'E major', form: 'scale', hands: 'right', octaves: 1 },
  { key: 'G major', form: 'arpeggio', hands: 'right', octaves: 2 },
];
const told = ({ startSec, endSec, recognition }: FoundAttempt) => ({
  startSec: Number(startSec.toFixed(1)),
  endSec: Number(endSec.toFixed(1)),
  choice: recognition.choice,
});

let session: Session;
/** Pushes the session block by block; what came, and how long the sections were. */
function inSections(blockFrames: number, sectionSec: number): readonly Section[] {
  const sections: Section[] = [];
  const { channel, sampleRateHz } = session;
  const ear = listenInSections({ sampleRateHz, channels: 1 }, (section) => sections.push(section), {
    sectionSec,
  });
  for (let at = 0; at < channel.length; at += blockFrames) ear.push([channel.subarray(at, at + blockFrames)]);
  expect(ear.finish().durationSec).toBe(channel.length / sampleRateHz);
  return sections;
}

beforeAll(async () => {
  const attempts = await Promise.all(
    EXERCISES.map((exercise, at) =>
      render({ seed: 70 + at, piano: 'dev', exercise, student: { bpm: 100 }, home: { peakDb: -8 } }),
    ),
  );
  session = joinSession(attempts, { seed: 3, pauseSec: { least: 9, most: 12 } });
});

describe('a recording that is listened to in sections', { timeout: 120_000 }, () => {
  it('comes to the same attempts as in one, each once, with pieces of any size', () => {
    const { heard, sound } = listenAndKeep({
      channels: [session.channel],
      sampleRateHz: session.sampleRateHz,
    });
    const whole = assessRecording(heard, sound).map(told);
    // Talk between may be taken for other playing: that, too, once and at its place.
    expect(whole.flatMap(({ choice }) => choice ?? [])).toEqual(
      EXERCISES.map((one) => expect.objectContaining(one) as unknown),
    );
    for (const blockFrames of [4_410, 1 << 20]) {
      const sections = inSections(blockFrames, 20);
      expect(sections.length).toBeGreaterThanOrEqual(3);
      expect(sections.flatMap(({ attempts }) => attempts.map(told))).toEqual(whole);
      for (const [at, { attempts, endSec }] of sections.entries())
        for (const { startSec, endSec: to } of attempts) {
          expect(startSec).toBeGreaterThanOrEqual(sections[at - 1]?.endSec ?? 0);
          expect(to).toBeLessThanOrEqual(endSec);
        }
    }
  });

  it('ends a section twice as long as wanted anywhere, so that nothing makes it hold more', () => {
    const ends = inSections(1 << 16, 10).map(({ endSec }) => endSec);
    const longest = Math.max(...ends.map((end, at) => end - (ends[at - 1] ?? 0)));
    expect(longest).toBeLessThan(2 * 10 + 2);
    expect(ends.at(-1)).toBe(session.channel.length / session.sampleRateHz);
  });

  it('is one section where it is short', () => {
    expect(inSections(1 << 16, 15 * 60)).toHaveLength(1);
  });

  it('is heard at the latest five and a half seconds after it sounded: so far a section ends before what has come', () => {
    const { channel, sampleRateHz } = session;
    const listener = createListener({ sampleRateHz, channels: 1 });
    const step = sampleRateHz / 4;
    const seen = new Set<number>();
    let latest = 0;
    for (let at = 0; at < channel.length; at += step) {
      listener.push([channel.subarray(at, at + step)]);
      for (const { timeSec } of listener.notesSoFar()) {
        const key = Math.round(timeSec * 1000);
        if (!seen.has(key)) latest = Math.max(latest, (at + step) / sampleRateHz - timeSec);
        seen.add(key);
      }
    }
    expect(seen.size).toBeGreaterThan(80);
    expect(latest).toBeLessThan(5.5);
    expect(latest).toBeGreaterThan(0);
  });
});
