/** What a key does while an attempt is heard. */
export type Deed =
  | 'next-spot'
  | 'spot-before'
  | 'next-attempt'
  | 'attempt-before'
  | 'play'
  | 'half'
  | 'loop'
  | 'remark'
  | 'speak'
  | 'left-hand'
  | 'right-hand'
  | 'both-hands'
  | 'exercise'
  | 'keys'
  | 'leave';

/** Of a key that was pressed: what counts. */
export interface Pressed {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
  readonly defaultPrevented: boolean;
  readonly target: EventTarget | null;
}

/** Where keys keep their own meaning: fields, the string of pearls, open lists. */
const FIELDS = 'input, textarea, select, [contenteditable], [data-spot], [role=meter], dialog';
/** What the space bar works by itself. */
const PRESSED_BY_SPACE = 'button, summary, a, [role=button]';

/** A key → what it does; null: nothing, it keeps its usual meaning. */
export function deedOf(event: Pressed): Deed | null {
  if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return null;
  const target = event.target !== null && 'closest' in event.target ? (event.target as Element) : null;
  if (target?.closest(FIELDS)) return null;
  switch (event.key) {
    case 'ArrowRight':
      return event.shiftKey ? 'next-attempt' : 'next-spot';
    case 'ArrowLeft':
      return event.shiftKey ? 'attempt-before' : 'spot-before';
    case ' ':
      return target?.closest(PRESSED_BY_SPACE) ? null : 'play';
    case 'h':
    case 'H':
      return 'half';
    case 'l':
    case 'L':
      return 'loop';
    case 'r':
    case 'R':
      return 'remark';
    case 's':
    case 'S':
      return 'speak';
    case 'n':
    case 'N':
      return 'next-attempt';
    case 'e':
    case 'E':
      return 'exercise';
    case '1':
      return 'left-hand';
    case '2':
      return 'right-hand';
    case '3':
      return 'both-hands';
    case '?':
      return 'keys';
    case 'Escape':
      return 'leave';
    default:
      return null;
  }
}
