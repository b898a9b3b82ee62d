import { describe, expect, it } from 'vitest';
import { decodeFile } from '../../../src/io/decode/index.ts';
import { LENGTH_SEC, fit, sample } from './reference.ts';

/**
 * Every sample was encoded from one closed-form signal by another implementation (SOURCE.md), so decoding it must give
 * that signal back: to the quantisation for lossless formats, nearly for the others, and at the right time for all.
 * `lag`: samples by which it may be late. `residualDb`: quantisation noise is 6.02 dB a bit below full scale
 * (b bits: −6.02·b − 1.76 dB for a full-scale sine; the tone is 6 dB below).
 */
const ROWS = [
  { file: 'wav-u8.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -40, lengthMs: 0 },
  {
    file: 'wav-s16-stereo.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  { file: 'wav-s24.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -120, lengthMs: 0 },
  {
    file: 'wav-s24-extensible-stereo.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -120,
    lengthMs: 0,
  },
  { file: 'wav-s32.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -130, lengthMs: 0 },
  { file: 'wav-f32.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -130, lengthMs: 0 },
  { file: 'wav-f64.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -130, lengthMs: 0 },
  { file: 'wav-rf64.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -88, lengthMs: 0 },
  {
    file: 'flac-s16-stereo.flac',
    container: 'FLAC',
    hz: 44_100,
    channels: 2,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  {
    file: 'flac-s24.flac',
    container: 'FLAC',
    hz: 48_000,
    channels: 1,
    lag: 0,
    residualDb: -120,
    lengthMs: 0,
  },
  {
    file: 'flac-in-ogg.oga',
    container: 'Ogg',
    hz: 44_100,
    channels: 2,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  {
    file: 'vorbis-stereo.ogg',
    container: 'Ogg',
    hz: 44_100,
    channels: 2,
    lag: 1,
    residualDb: -20,
    lengthMs: 0,
  },
  {
    file: 'vorbis-mono.ogg',
    container: 'Ogg',
    hz: 44_100,
    channels: 1,
    lag: 1,
    residualDb: -20,
    lengthMs: 0,
  },
  {
    file: 'opus-stereo.ogg',
    container: 'Ogg',
    hz: 48_000,
    channels: 2,
    lag: 2,
    residualDb: -20,
    lengthMs: 0,
  },
  { file: 'opus-mono.ogg', container: 'Ogg', hz: 48_000, channels: 1, lag: 2, residualDb: -20, lengthMs: 0 },
  {
    file: 'opus-stereo.webm',
    container: 'WebM',
    hz: 48_000,
    channels: 2,
    lag: 2,
    residualDb: -20,
    lengthMs: 20,
  },
  {
    file: 'opus-mono.webm',
    container: 'WebM',
    hz: 48_000,
    channels: 1,
    lag: 2,
    residualDb: -20,
    lengthMs: 20,
  },
  {
    file: 'opus-stereo.mp4',
    container: 'MP4',
    hz: 48_000,
    channels: 2,
    lag: 2,
    residualDb: -20,
    lengthMs: 1,
  },
  { file: 'video.webm', container: 'WebM', hz: 48_000, channels: 1, lag: 2, residualDb: -20, lengthMs: 20 },
  { file: 'mp3-stereo.mp3', container: 'MP3', hz: 44_100, channels: 2, lag: 1, residualDb: -20, lengthMs: 0 },
  {
    file: 'mp3-mono-vbr.mp3',
    container: 'MP3',
    hz: 44_100,
    channels: 1,
    lag: 1,
    residualDb: -20,
    lengthMs: 0,
  },
  // Without the encoder's tag nobody can know its delay: 1105 samples with this encoder, 25 ms.
  {
    file: 'mp3-mono-no-header.mp3',
    container: 'MP3',
    hz: 44_100,
    channels: 1,
    lag: 1110,
    residualDb: -20,
    lengthMs: 60,
  },
  {
    file: 'pcm-in-quicktime.mov',
    container: 'MP4',
    hz: 16_000,
    channels: 1,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  {
    file: 'mu-law-in-quicktime.mov',
    container: 'MP4',
    hz: 16_000,
    channels: 1,
    lag: 0,
    residualDb: -36,
    lengthMs: 0,
  },
  // G.711 keeps at least 33 dB between signal and noise over its range (ITU-T G.711, 1988, with G.712): 5 segments of 16 steps.
  { file: 'wav-mu-law.wav', container: 'WAV', hz: 16_000, channels: 1, lag: 0, residualDb: -36, lengthMs: 0 },
  {
    file: 'wav-a-law-stereo.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -36,
    lengthMs: 0,
  },
  // Four bits a sample: the steps must first grow where the tone begins. The encoder filled the last block up.
  {
    file: 'wav-ima-adpcm-stereo.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -25,
    lengthMs: 35,
  },
  {
    file: 'wav-ms-adpcm-stereo.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -25,
    lengthMs: 35,
  },
  {
    file: 'wav-ms-adpcm.wav',
    container: 'WAV',
    hz: 16_000,
    channels: 1,
    lag: 0,
    residualDb: -25,
    lengthMs: 35,
  },
  {
    file: 'aiff-s16-stereo.aiff',
    container: 'AIFF',
    hz: 44_100,
    channels: 2,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  {
    file: 'aiff-s24.aiff',
    container: 'AIFF',
    hz: 48_000,
    channels: 1,
    lag: 0,
    residualDb: -120,
    lengthMs: 0,
  },
  {
    file: 'aifc-sowt.aifc',
    container: 'AIFF',
    hz: 16_000,
    channels: 1,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  {
    file: 'aifc-f32.aifc',
    container: 'AIFF',
    hz: 16_000,
    channels: 1,
    lag: 0,
    residualDb: -130,
    lengthMs: 0,
  },
  {
    file: 'aifc-ima4-stereo.aifc',
    container: 'AIFF',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -25,
    lengthMs: 4,
  },
  {
    file: 'caf-s16-stereo.caf',
    container: 'CAF',
    hz: 44_100,
    channels: 2,
    lag: 0,
    residualDb: -88,
    lengthMs: 0,
  },
  { file: 'caf-f32.caf', container: 'CAF', hz: 48_000, channels: 1, lag: 0, residualDb: -130, lengthMs: 0 },
  { file: 'caf-a-law.caf', container: 'CAF', hz: 16_000, channels: 1, lag: 0, residualDb: -36, lengthMs: 0 },
  {
    file: 'caf-ima4-stereo.caf',
    container: 'CAF',
    hz: 16_000,
    channels: 2,
    lag: 0,
    residualDb: -25,
    lengthMs: 4,
  },
  // This writer leaves the encoder's own 312 samples (6.5 ms) in.
  {
    file: 'caf-opus-stereo.caf',
    container: 'CAF',
    hz: 48_000,
    channels: 2,
    lag: 314,
    residualDb: -20,
    lengthMs: 20,
  },
] as const;

describe('decodeFile gives back what another implementation encoded', () => {
  it.each(ROWS)('$file', async ({ file, container, hz, channels, lag, residualDb, lengthMs }) => {
    const audio = await decodeFile(sample(file), file);
    expect(audio.container).toBe(container);
    expect(audio.sampleRateHz).toBe(hz);
    expect(audio.channels).toHaveLength(channels);
    expect(audio.remarks).toEqual([]);
    audio.channels.forEach((decoded, channel) => {
      const found = fit(decoded, channel, hz, Math.max(60, lag));
      expect(Math.abs(found.lag)).toBeLessThanOrEqual(lag);
      expect(Math.abs(found.gainDb)).toBeLessThan(0.5);
      expect(found.residualDb).toBeLessThan(residualDb);
      expect(Math.abs(decoded.length / hz - LENGTH_SEC) * 1000).toBeLessThanOrEqual(lengthMs + 1e-6);
    });
  });
});
