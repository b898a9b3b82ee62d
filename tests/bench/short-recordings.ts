import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ExerciseChoice } from '../../src/engine/index.ts';
import { encodeWav } from '../../src/io/encode/index.ts';
import { createRandom } from '../support/random.ts';
import { render } from '../support/render.ts';

const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'G minor', form: 'triads', hands: 'left', octaves: 1 },
  { key: 'Bb major', form: 'scale', hands: 'right', octaves: 1 },
  { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 1 },
  { key: 'A major', form: 'progression', hands: 'right', octaves: 1 },
];

/**
 * Fills a folder with short recordings, a folder a student; four attempts are rendered, and each recording is one of them, as loud and
 * in as much noise as no other: no two are copies. Gives back their paths.
 */
export async function writeShort(folder: string, count: number, students = 40): Promise<readonly string[]> {
  const student = { bpm: 120, leadInSec: 0.5, leadOutSec: 0.8 };
  const played = await Promise.all(
    EXERCISES.map((exercise, at) => render({ seed: 7300 + at, piano: 'dev', exercise, student })),
  );
  const longest = Math.max(...played.map(({ channels }) => channels[0]!.length));
  const random = createRandom(9100);
  const bed = Float32Array.from({ length: longest + count }, () => random.uniform(-1, 1));
  return Array.from({ length: count }, (_, at) => {
    const { channels, sampleRateHz } = played[at % played.length]!;
    const [gain, noise] = [random.uniform(0.3, 1), 10 ** (random.uniform(-75, -60) / 20)];
    // The same noise from another place on: drawn anew for each it would take longer than all the rest.
    const sound = channels[0]!.map((value, index) => gain * value + noise * bed[at + index]!);
    const its = join(folder, NAMES[at % students]!);
    const path = join(its, `${at}.wav`);
    mkdirSync(its, { recursive: true });
    writeFileSync(path, new Uint8Array(encodeWav({ channels: [sound], sampleRateHz })));
    return path;
  });
}

/** Two syllables each: names that no rule takes for anything else. */
const NAMES: readonly string[] = ['Ma', 'Jo', 'Li', 'Ka', 'To', 'Ne', 'Su', 'Ro'].flatMap((first) =>
  ['ra', 'nas', 'vo', 'ldi', 'ske'].map((second) => first + second),
);

/** The name of such a recording → what was played. */
export function exerciseIn(path: string): ExerciseChoice {
  return EXERCISES[Number(/(\d+)\.wav$/.exec(path)?.[1]) % EXERCISES.length]!;
}
