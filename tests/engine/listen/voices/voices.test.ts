import { describe, expect, it } from 'vitest';
import { RATE_HZ, SampleHistory } from '../../../../src/engine/listen/audio/index.ts';
import { VoiceWatch } from '../../../../src/engine/listen/voices/index.ts';
import { playStrings } from '../strings.ts';

function glidesIn(samples: Float32Array): number {
  const history = new SampleHistory(samples.length);
  const watch = new VoiceWatch(history);
  history.append(Float64Array.from(samples), 0, samples.length);
  watch.advance();
  return watch.glides;
}

/** A tone with five harmonics whose pitch moves by so many semitones a second, the way a sentence falls. */
function voice(semitonesPerSec: number): Float32Array {
  let phase = 0;
  return Float32Array.from({ length: 2 * RATE_HZ }, (_, i) => {
    phase += (2 * Math.PI * 200 * 2 ** ((semitonesPerSec * ((i / RATE_HZ) % 0.8)) / 12)) / RATE_HZ;
    let sum = 0;
    for (let n = 1; n <= 5; n++) sum += Math.sin(n * phase) / n;
    return 0.1 * sum;
  });
}

describe('a voice', () => {
  it('is noticed where its pitch falls', () => {
    expect(glidesIn(voice(-10))).toBeGreaterThan(0);
  });

  it('is not heard in a steady tone, in strings, or in silence', () => {
    const tune = [60, 64, 67, 72].map((midi, i) => ({ timeSec: 0.2 + 0.4 * i, midi }));
    expect(glidesIn(voice(0))).toBe(0);
    expect(glidesIn(playStrings(tune, { seconds: 2 }))).toBe(0);
    expect(glidesIn(new Float32Array(2 * RATE_HZ))).toBe(0);
  });
});
