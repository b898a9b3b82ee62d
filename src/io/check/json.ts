import * as v from 'valibot';
import type { Shape } from '../../engine/index.ts';
import { plainText } from './text.ts';

/** Far deeper than anything of ours: a report has five levels. */
const MOST_LEVELS = 24;

/** JSON text as bytes (UTF-8, RFC 8259) → its value; `undefined` where it is none, or nested to make a reader stumble. */
export function parseJson(bytes: Uint8Array): unknown {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (levelsOf(text) > MOST_LEVELS) return undefined;
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** How deep brackets stand in brackets, those in strings left out. */
function levelsOf(text: string): number {
  let [deepest, levels, inString] = [0, 0, false];
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (inString) {
      if (sign === '\\') at++;
      else if (sign === '"') inString = false;
    } else if (sign === '"') inString = true;
    else if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++levels);
    else if (sign === ']' || sign === '}') levels--;
  }
  return deepest;
}

/**
 * A value out of JSON, its text made plain → the same value, known to be what the schema says; else what is first wrong with it.
 * It is the value as it came and not valibot's copy of it: fields that a later version has stay, at any depth and in their order.
 */
export function checked<Schema extends v.GenericSchema>(
  schema: Schema,
  value: unknown,
): { readonly value: Shape<Schema> } | { readonly issue: v.BaseIssue<unknown> } {
  const plain = plainJson(value);
  const found = v.safeParse(schema, plain, { abortEarly: true });
  return found.success ? { value: plain as Shape<Schema> } : { issue: found.issues[0] };
}

/** A name of ours for a field; also of one that a later version adds. */
const FIELD = /^[A-Za-z]\w{0,60}$/;

/** A value out of JSON → the same with all its text plain, without fields whose names are no names. */
function plainJson(value: unknown): unknown {
  if (typeof value === 'string') return plainText(value);
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(plainJson);
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => FIELD.test(name))
      .map(([name, part]) => [name, plainJson(part)]),
  );
}
