/** What keys do while an attempt is heard; letters large or small. */
const DEEDS = {
  ArrowRight: 'next-spot',
  ArrowLeft: 'spot-before',
  ' ': 'play',
  h: 'half',
  l: 'loop',
  r: 'remark',
  s: 'speak',
  n: 'next-attempt',
  e: 'exercise',
  1: 'left-hand',
  2: 'right-hand',
  3: 'both-hands',
  '?': 'keys',
  Escape: 'leave',
} as const;
/** … and with Shift, where that is something else. */
const WITH_SHIFT = { ArrowRight: 'next-attempt', ArrowLeft: 'attempt-before' } as const;

type In<Deeds> = Deeds[keyof Deeds];
export type Deed = In<typeof DEEDS> | In<typeof WITH_SHIFT>;
type ByKey = Readonly<Record<string, Deed>>;

/** Of a key that was pressed: what counts. */
export type Pressed = Pick<
  KeyboardEvent,
  'key' | 'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey' | 'defaultPrevented' | 'target'
>;

/** Where keys keep their own meaning: fields, the string of pearls, open lists. */
const FIELDS = 'input, textarea, select, [contenteditable], [data-spot], [role=meter], dialog';
/** What the space bar works by itself. */
const PRESSED_BY_SPACE = 'button, summary, a, [role=button]';

/** A key → what it does; null: nothing, it keeps its usual meaning. */
export function deedOf(event: Pressed): Deed | null {
  if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return null;
  const target = event.target !== null && 'closest' in event.target ? (event.target as Element) : null;
  if (target?.closest(event.key === ' ' ? `${FIELDS}, ${PRESSED_BY_SPACE}` : FIELDS)) return null;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const deeds: ByKey = event.shiftKey ? { ...DEEDS, ...WITH_SHIFT } : DEEDS;
  return deeds[key] ?? null;
}
