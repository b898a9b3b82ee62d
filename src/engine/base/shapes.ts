import * as v from 'valibot';

/*
 * Of what the published formats (report, review, journal, desk) are made: each is defined once, as a schema from which its type,
 * its JSON schema and its check follow. Everything is bounded, so that no file from outside can fill a device or a picture.
 */

/** What a schema lets through, never to be written to. */
export type Shape<Schema extends v.GenericSchema> = Fixed<v.InferOutput<Schema>>;
type Fixed<T> = T extends readonly (infer Item)[]
  ? readonly Fixed<Item>[]
  : T extends object
    ? { readonly [Name in keyof T]: Fixed<T[Name]> }
    : T;

/** The most that a report of one attempt can hold; far beyond any that was ever played. */
const MOST_ITEMS = 20_000;
const MOST_LETTERS = 2000;

export const TEXT = v.pipe(v.string(), v.maxLength(MOST_LETTERS));
/** Far beyond any ms, dB, % or cent, so that whatever is reckoned with it stays a number. */
export const NUMBER = v.pipe(v.number(), v.minValue(-1e9), v.maxValue(1e9));
/** Within a day: what is drawn along it must end. */
export const SECONDS = v.pipe(v.number(), v.minValue(-60), v.maxValue(86_400));
export const STEP = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_ITEMS));
export const MIDI = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(127),
  v.description('69 is A4; 21 to 108 are the keys of a piano'),
);
export const NOTE_NAME = v.pipe(
  v.string(),
  v.regex(/^[A-G](#{1,3}|b{1,3})?-?\d{1,2}$/),
  v.description('scientific pitch notation, spelt for the key, e.g. "G#4"'),
);
export const BPM = v.pipe(v.number(), v.minValue(1), v.maxValue(1000));

/** At most so many of a kind as a report can hold. */
export const listOf = <Item extends v.GenericSchema>(item: Item): v.ArraySchema<Item, undefined> =>
  v.pipe(v.array(item), v.maxLength(MOST_ITEMS));

/**
 * The same with what it is in words, for the published schema. Of the same type, too: valibot's own names all that the shape holds once
 * more, so that at each depth of a report its types grew twofold, to two megabytes.
 */
export const told = <Schema extends v.GenericSchema>(description: string, schema: Schema): Schema =>
  v.pipe(schema, v.description(description)) as unknown as Schema;

/** Of something that may hold more: what it has of a shape's fields, in the order of the shape. */
export function fieldsOf<Entries extends v.ObjectEntries, Value extends object>(
  { entries }: { readonly entries: Entries },
  value: Value,
): Pick<Value, keyof Entries & keyof Value> {
  const names = Object.keys(entries) as (keyof Entries & keyof Value)[];
  const there = names.filter((name) => value[name] !== undefined);
  return Object.fromEntries(there.map((name) => [name, value[name]])) as Pick<Value, (typeof names)[number]>;
}
