import * as v from 'valibot';

/** A schema as it is walked: what its kind needs. */
interface Walked {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Walked>>;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
  readonly wrapped?: Walked;
  readonly item?: Walked;
  readonly pipe?: readonly [Walked, ...unknown[]];
}

/** What a field is called → what stands in it, where its schema allows more than is ever said, or anything. */
const BY_FIELD: Readonly<Record<string, readonly unknown[]>> = {
  ...Object.fromEntries(
    ['key', 'like', 'not', 'ofKey', 'nextKey'].map((name) => [name, ['A major', 'F# minor']]),
  ),
  ...Object.fromEntries(['right', 'unsure', 'bar', 'fromBar', 'toBar'].map((name) => [name, [2, 1, 0, 13]])),
  ...Object.fromEntries(['lateMs', 'byMs', 'spreadMs', 'together', 'alone'].map((name) => [name, [90, 8]])),
  every: [2, 3, 4],
  struck: ['C', 'F', 'Bb'],
  wanted: ['C#', 'E'],
  tempoBpm: [80, 38],
  db: [4.2, -1.3],
  gapMs: [40, -12],
  finding: [null, { notice: 'levels-cut' }],
  steps: [[3]],
  step: [3],
  faults: [1],
  sure: [0.995],
};
const CHORDS: readonly unknown[] = [
  ...['only', 'first', 'middle', 'last', 'up', 'down'].flatMap((which) =>
    ['V7', 'iv'].map((label) => ({ label, number: 2, which })),
  ),
  ...['only', 'up', 'down'].flatMap((which) =>
    ['root position', 'first inversion', 'second inversion'].map((label) => ({ label, number: 2, which })),
  ),
  { label: 'root position', number: 4, which: 'top' },
  ...[1, 2, 3, 7, 8].map((number) => ({ label: null, number, which: 'only' })),
  { label: null, number: 2, which: 'down' },
];
const NAMES = ['E', 'C#', 'Bb'];
const NUMBERS = [90, 8.4];
/** With those after which a language changes its grammar, and the first that is written in figures. */
const COUNTS = [2, 1, 5, 13];

/**
 * A schema → values that it lets through: a first one, and others that each differ from it in one place, so that every branch of every
 * place is there. What stands in several places is gone through once, and later only by its kinds.
 */
export function createValues(): <Output>(schema: v.GenericSchema<unknown, Output>) => readonly Output[] {
  const met = new Set<Walked>();
  const valuesOf = (schema: Walked, field: string, brief: boolean): readonly unknown[] => {
    const core = coreOf(schema);
    const some = (values: readonly unknown[]): readonly unknown[] => (brief ? values.slice(0, 2) : values);
    const given = BY_FIELD[field];
    switch (core.type) {
      case 'literal':
        return [core.literal];
      case 'picklist':
        return some(core.options!);
      case 'boolean':
        return [false, true];
      case 'number':
        return numbers(given) ?? (isCount(schema) ? some(COUNTS) : brief ? NUMBERS.slice(0, 1) : NUMBERS);
      case 'string':
        return texts(given) ?? some(NAMES);
      case 'nullable':
        return field === 'finding' ? given! : [...valuesOf(core.wrapped!, field, brief), null];
      case 'exact_optional':
        return valuesOf(core.wrapped!, field, brief);
      case 'array':
        return field === 'steps' ? given! : listsOf(valuesOf(core.item!, '', brief), field);
      case 'union':
        return core.options!.flatMap((option) => valuesOf(option as Walked, field, brief));
      case 'variant': {
        const again = brief || met.has(core);
        met.add(core);
        const kinds = core.options!.map((option) => valuesOf(option as Walked, field, again));
        return again ? kinds.map(([first]) => first) : kinds.flat();
      }
      case 'object': {
        const again = brief || met.has(core);
        met.add(core);
        if ('label' in core.entries!) return again ? CHORDS.slice(0, 1) : CHORDS;
        return objectsOf(core.entries!, again);
      }
      default:
        throw new Error(`no values for a schema of type ${core.type}`);
    }
  };
  const objectsOf = (entries: Readonly<Record<string, Walked>>, brief: boolean): readonly unknown[] => {
    const places = Object.entries(entries).map(([name, entry]) => {
      const values = valuesOf(entry, name, brief);
      return [name, entry.type === 'exact_optional' ? [undefined, ...values] : values] as const;
    });
    const first = Object.fromEntries(
      places.flatMap(([name, [value]]) => (value === undefined ? [] : [[name, value]])),
    );
    return [
      first,
      ...places.flatMap(([name, values]) => values.slice(1).map((value) => ({ ...first, [name]: value }))),
    ];
  };
  return <Output>(schema: v.GenericSchema<unknown, Output>) =>
    valuesOf(schema as unknown as Walked, '', false).filter((value): value is Output => v.is(schema, value));
}

const numbers = (given?: readonly unknown[]) => (typeof given?.[0] === 'number' ? given : undefined);
const texts = (given?: readonly unknown[]) => (typeof given?.[0] === 'string' ? given : undefined);

/** One of each, two, three; none where that says something. */
function listsOf(items: readonly unknown[], field: string): readonly unknown[] {
  const several = [items.slice(0, 2), items.slice(0, 3)];
  return [
    ...items.map((item) => [item]),
    ...(items.length > 1 ? several : []),
    ...(field === 'lacks' ? [[]] : []),
  ];
}

/** Without what was added to it: its description, its bounds. */
function coreOf(schema: Walked): Walked {
  const first = schema.pipe?.[0];
  return first === undefined ? schema : coreOf(first);
}

function isCount(schema: Walked): boolean {
  return (schema.pipe ?? []).some((one) => {
    const step = one as Walked;
    return step.type === 'integer' || (step.pipe !== undefined && isCount(step));
  });
}
