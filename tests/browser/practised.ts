import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { practisedExercise } from '../../src/engine/index.ts';
import { encodeFloatWav } from '../support/float-wav.ts';
import { FIXTURES } from '../support/fixtures.ts';
import { createRandom } from '../support/random.ts';
import { renderPerformance } from '../support/render.ts';
import { STUDENT_DEFAULTS } from '../support/student/knobs.ts';
import { perform } from '../support/student/perform.ts';

/** What the example's next step asks for (four notes round its late thumb, three times in a row), done well. */
export async function practisedSound(): Promise<{ channels: readonly Float32Array[]; sampleRateHz: number }> {
  const { spec } = FIXTURES.find(({ name }) => name === 'late-thumb')!;
  const intention = { stretch: { fromStep: 0, toStep: 3 }, times: 3, rhythm: 'even' } as const;
  const played = practisedExercise(spec.exercise, { intention, repeats: 3 });
  const performance = perform(played, { ...STUDENT_DEFAULTS, bpm: 59 }, createRandom(7));
  return renderPerformance(performance, { ...spec, seed: 7 });
}

/** The same for the microphone, after a second of silence → its path and how long it is, seconds. */
export async function practisedMicrophone(): Promise<{ path: string; lengthSec: number }> {
  const { channels, sampleRateHz } = await practisedSound();
  const sound = new Float32Array(channels[0]!.length + sampleRateHz);
  sound.set(channels[0]!, sampleRateHz);
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'practised.wav');
  writeFileSync(path, new Uint8Array(encodeFloatWav({ channels: [sound], sampleRateHz })));
  return { path, lengthSec: sound.length / sampleRateHz };
}
