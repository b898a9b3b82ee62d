import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { schemaFaults } from './report-schema.ts';

const SCHEMA = resolve(import.meta.dirname, '../../src/terminal/pile/desk.schema.json');
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(
  JSON.parse(readFileSync(SCHEMA, 'utf8')) as object,
);

interface Desk {
  readonly students: readonly { readonly attempts: readonly { readonly report: unknown }[] }[];
}

/** What is wrong with what `desk --json` printed, by the published schemas; nothing where it is as promised. */
export function deskFaults(desk: unknown): readonly string[] {
  if (!validate(desk))
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  const reports = (desk as Desk).students.flatMap(({ attempts }) => attempts.map(({ report }) => report));
  return reports.filter((report) => report !== null).flatMap(schemaFaults);
}
