import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { publishedSchemas } from '../support/schemas.ts';

const schemas = await publishedSchemas();

it.each(schemas.map(({ path, text }) => [relative(resolve('.'), path), path, text]))(
  '%s says what is defined (else: npm run schemas)',
  (_, path, text) => {
    expect(readFileSync(path!, 'utf8')).toBe(text);
  },
);

it('finds the four formats', () => {
  expect(schemas).toHaveLength(4);
});
