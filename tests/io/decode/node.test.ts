import { describe, expect, it } from 'vitest';
import { DecodeError, decodeFile } from '../../../src/io/decode/index.ts';
import { decodeInNode } from '../../../src/io/decode/node.ts';
import { LENGTH_SEC, fit, sample } from './reference.ts';

/** As in decode.test.ts. A bare AAC stream cannot say how long its encoder took to start: 1024 samples with this one. */
const ROWS = [
  { file: 'aac-stereo.m4a', container: 'MP4', hz: 44_100, channels: 2, lag: 0, lengthMs: 0 },
  { file: 'aac-mono.m4a', container: 'MP4', hz: 44_100, channels: 1, lag: 0, lengthMs: 0 },
  { file: 'video.mp4', container: 'MP4', hz: 44_100, channels: 2, lag: 0, lengthMs: 0 },
  { file: 'aac-mono.aac', container: 'AAC', hz: 48_000, channels: 1, lag: 1024, lengthMs: 35 },
] as const;

describe('decodeInNode gives back what another implementation encoded as AAC', () => {
  it.each(ROWS)('$file', async ({ file, container, hz, channels, lag, lengthMs }) => {
    const audio = await decodeInNode(sample(file), file);
    expect(audio).toMatchObject({ container, sampleRateHz: hz, remarks: [] });
    expect(audio.channels).toHaveLength(channels);
    audio.channels.forEach((decoded, channel) => {
      const found = fit(decoded, channel, hz, Math.max(60, lag));
      expect(Math.abs(found.lag - lag)).toBeLessThanOrEqual(1);
      expect(Math.abs(found.gainDb)).toBeLessThan(0.1);
      expect(found.residualDb).toBeLessThan(-30);
      expect(Math.abs(decoded.length / hz - LENGTH_SEC) * 1000).toBeLessThanOrEqual(lengthMs + 1e-6);
    });
  });

  it('and everything else as decodeFile does', async () => {
    const [flac, wanted] = await Promise.all([
      decodeInNode(sample('flac-s24.flac'), 'a'),
      decodeFile(sample('flac-s24.flac'), 'a'),
    ]);
    expect(flac).toEqual(wanted);
  });

  it.each([
    ['alac-mono.m4a', 'unsupported', /Apple Lossless.* Convert it/],
    ['windows-media.wma', 'unsupported', /Windows Media.* Convert it/],
    ['video-without-sound.webm', 'no-sound-track', /no sound in it/],
  ])('and refuses %s as decodeFile does', async (file, kind, message) => {
    const error = await decodeInNode(sample(file), file).catch((cause: unknown) => cause);
    expect(error).toBeInstanceOf(DecodeError);
    expect(error).toMatchObject({ kind, message: expect.stringMatching(message) as string });
  });

  it('decodeFile alone refuses AAC by name, for whoever has another decoder', async () => {
    await expect(decodeFile(sample('aac-mono.m4a'), 'voice.m4a')).rejects.toThrow(
      /^voice\.m4a: It holds AAC sound/,
    );
  });
});
