import { describe, expect, it } from 'vitest';
import { checkRoom } from '../../../src/engine/index.ts';
import { troubleOf } from '../../../src/io/microphone/troubles.ts';
import { sentenceIn } from '../../../src/ui/language/sentences.ts';

const ENGLISH = /\b(the|is|are|its|were|and)\b/i;

describe('what is said at the piano has a German sentence', () => {
  it.each(['gone', 'silenced', 'asleep', 'gap', 'back'] as const)('a microphone that is %s', (kind) => {
    expect(sentenceIn(troubleOf(kind, 0.3).message, 'de', 'german')).not.toMatch(ENGLISH);
  });

  it('a room in which no note was heard', () => {
    const silence = { noiseDb: -70, hum: null };
    const quiet = { channels: [new Float32Array(48_000 * 5)], sampleRateHz: 48_000 };
    const { findings } = checkRoom(silence, quiet);
    expect(findings.length).toBeGreaterThan(0);
    for (const { detail } of findings) expect(sentenceIn(detail, 'de', 'german')).not.toMatch(ENGLISH);
  });

  it.each([
    'Only 2 of three notes were heard; put the device nearer to the piano and play them again, a little louder.',
    'The piano stands only 12 dB above the room; put the device nearer to it.',
    'The room is loud: the piano stands only 12 dB above it; close windows and doors, or turn off what hums.',
    'Mains hum at 50 Hz is near; move the device away from chargers and cables.',
    'The page was closed during this attempt; what had sounded until then was kept.',
  ])('“%s”', (said) => {
    expect(sentenceIn(said, 'de', 'german')).not.toMatch(ENGLISH);
  });
});
