import { describe, expect, it } from 'vitest';
import { ENGLISH } from '../../../src/ui/language/english/index.ts';
import { GERMAN } from '../../../src/ui/language/german/index.ts';

interface Leaf {
  readonly path: string;
  readonly english: unknown;
  readonly german: unknown;
}

/** Both tables, string by string. */
function leaves(english: unknown, german: unknown, path = ''): readonly Leaf[] {
  if (typeof english !== 'object' || english === null) return [{ path, english, german }];
  return Object.entries(english).flatMap(([name, value]) =>
    leaves(value, (german as Record<string, unknown>)[name], `${path}.${name}`),
  );
}

/** A string, or what a function makes of "X" or 2. */
function said(value: unknown): string {
  if (typeof value === 'string') return value;
  const make = value as (...given: unknown[]) => string;
  const numbers = make(...Array.from({ length: make.length }, () => 2));
  return numbers;
}

const ALL = leaves(ENGLISH, GERMAN);

/** What is the same word in both languages. */
const ALIKE =
  /\.theory\.(hand|arpeggio|signatureOne)$|\.namings\.|\.signs\.$|\.start$|\.finger$|\.FORMS\.arpeggio|\.tempo\.term|\.aside$|\.form$|\.octaves$|\.trend\.tempo$|\.columns\.arpeggio$|\.intend\.(TOUCHES\.(legato|staccato)|LOUDNESSES\.(p|mf|f)|tempo)$|\.report\.hand$|\.spreadsheets\.|\.compose\.(note|inHand)$/;

describe('the table of strings', () => {
  it('has several hundred, the German ones all there', () => {
    expect(ALL.length).toBeGreaterThan(150);
    for (const { path, german } of ALL) expect(typeof german, path).toMatch(/string|function/);
  });

  it('says in German nothing in English', () => {
    const same = ALL.filter(({ english, german }) => said(english) === said(german)).map(({ path }) => path);
    expect(same.filter((path) => !ALIKE.test(path))).toEqual([]);
  });

  it('makes whole sentences of what it is given', () => {
    for (const { path, english, german } of ALL)
      for (const text of [said(english), said(german)])
        expect(text, path).not.toMatch(/undefined|\[object|NaN|=>|\s{2}/);
  });

  it('says du, never Sie', () => {
    for (const { path, german } of ALL)
      expect(said(german), path).not.toMatch(/\bIhnen\b|\bIhre?n?\b|[a-z,] Sie\b/);
  });
});
