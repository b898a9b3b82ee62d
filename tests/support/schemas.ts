import { resolve } from 'node:path';
import { toJsonSchema } from '@valibot/to-json-schema';
import * as prettier from 'prettier';
import type { GenericSchema } from 'valibot';
import { BPM, MIDI, NOTE_NAME, STEP } from '../../src/engine/base/shapes.ts';
import { BUILDABLE } from '../../src/engine/exercise/index.ts';
import { CHOICE, HAND } from '../../src/engine/exercise/types.ts';
import { NOTICE, SOUND_NOTICE } from '../../src/engine/notices/index.ts';
import { REMARK } from '../../src/engine/match/types.ts';
import { FINDING } from '../../src/engine/listen/types.ts';
import { FIGURE, REPORT } from '../../src/engine/report/types.ts';
import { ADVICE } from '../../src/engine/report/words/said/advice.ts';
import {
  CHORD_PLACE,
  CROSSING_AT,
  FAULT,
  PLACE as PLACE_IN_IT,
  SIGNATURE,
  SPOT,
  TASK,
} from '../../src/engine/report/words/said/places.ts';
import { STATEMENT } from '../../src/engine/report/words/said/statements.ts';
import { PASSAGES } from '../../src/io/scores/index.ts';
import { MANIFEST_V1, MOMENT, PLACE } from '../../src/io/review/manifest.ts';
import { DESK } from '../../src/terminal/pile/json.ts';

const OF_A_REPORT = {
  bpm: BPM,
  midi: MIDI,
  noteName: NOTE_NAME,
  step: STEP,
  choice: BUILDABLE,
  hand: HAND,
  figure: FIGURE,
  remark: REMARK,
  finding: FINDING,
  notice: NOTICE,
  soundNotice: SOUND_NOTICE,
  chord: CHORD_PLACE,
  placeInIt: PLACE_IN_IT,
  spot: SPOT,
  task: TASK,
  fault: FAULT,
  crossing: CROSSING_AT,
  signature: SIGNATURE,
  statement: STATEMENT,
  advice: ADVICE,
};

/** The published formats: where their schema lies, from the repository's root; what it is made of; what gets a name of its own. */
const FORMATS: readonly {
  readonly file: string;
  readonly schema: GenericSchema;
  readonly definitions: Readonly<Record<string, GenericSchema>>;
}[] = [
  { file: 'src/engine/report/report.schema.json', schema: REPORT, definitions: OF_A_REPORT },
  {
    file: 'src/io/review/review.schema.json',
    schema: MANIFEST_V1,
    definitions: { choice: BUILDABLE, midi: MIDI, moment: MOMENT, place: PLACE },
  },
  {
    file: 'src/io/scores/passages.schema.json',
    schema: PASSAGES,
    definitions: { noteName: NOTE_NAME, hand: HAND },
  },
  {
    file: 'src/terminal/pile/desk.schema.json',
    schema: DESK,
    definitions: { ...OF_A_REPORT, exercise: CHOICE, report: REPORT },
  },
];

const DIALECT = 'https://json-schema.org/draft/2020-12/schema';
const ROOT = resolve(import.meta.dirname, '../..');

/** Every published JSON schema, made from the definitions that type and check the same things: its path and its text. */
export async function publishedSchemas(): Promise<
  readonly { readonly path: string; readonly text: string }[]
> {
  return Promise.all(
    FORMATS.map(async ({ file, schema, definitions }) => {
      const path = resolve(ROOT, file);
      // What a check reckons (that the steps are those of the exercise), no JSON schema can say.
      const json = toJsonSchema(schema, {
        target: 'draft-2020-12',
        ignoreActions: ['check'],
        definitions: { ...definitions },
      });
      const { title, description, ...rest } = json;
      const said = { $schema: DIALECT, title, description, ...rest };
      const options = { ...(await prettier.resolveConfig(path)), filepath: path };
      return { path, text: await prettier.format(JSON.stringify(said), options) };
    }),
  );
}
