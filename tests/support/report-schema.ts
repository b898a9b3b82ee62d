import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';

const SCHEMA = resolve(import.meta.dirname, '../../src/engine/report/report.schema.json');
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(
  JSON.parse(readFileSync(SCHEMA, 'utf8')) as object,
);

/** What is wrong with a report, as a file holds it, by the published schema; nothing where it is as promised. */
export function schemaFaults(report: unknown): readonly string[] {
  // What JSON cannot say is lost on the way.
  validate(JSON.parse(JSON.stringify(report)));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
