import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tell } from '../words/scenes.ts';

const DEFINITIONS = readFileSync(
  resolve(import.meta.dirname, '../../../../src/engine/report/measures/README.md'),
  'utf8',
);

describe('the definitions of the figures', () => {
  const { measures } = tell({ choice: { key: 'D major', form: 'triads', hands: 'together', octaves: 1 } });

  it('are asked for of every figure that there is', () => {
    expect(Object.keys(measures).length).toBeGreaterThan(20);
  });

  it.each(Object.keys(measures))('have an entry for %s', (figure) => {
    expect(DEFINITIONS).toContain(`\`${figure}\``);
  });
});
