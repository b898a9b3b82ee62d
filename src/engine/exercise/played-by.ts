import type { ExpectedNote, Hand } from './types.ts';

/** A note as this hand plays it, under its own finger; nothing where it does not. */
export function playedBy(hand: Hand, note: ExpectedNote): readonly ExpectedNote[] {
  if (note.hand === hand) return [note];
  return note.leftFinger === undefined ? [] : [{ ...note, hand, finger: note.leftFinger }];
}
