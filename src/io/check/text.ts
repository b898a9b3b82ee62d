/**
 * Signs that are not seen and make text show otherwise than it reads: controls, halves of signs, and marks of direction
 * that reach beyond their line (Unicode Standard Annex 9: embeddings, overrides, isolates, and the marks that go with them).
 */
const UNSEEN = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu;

/** Text from outside → what may be shown of it: paragraphs stay, unseen signs go. It is text, never markup. */
export function plainText(text: string): string {
  return text
    .replace(/\r\n?|[\u2028\u2029]/g, '\n')
    .replace(UNSEEN, (sign) => (sign === '\n' ? sign : sign === '\t' ? ' ' : ''));
}

/** The same for a name, which has one line. */
export function plainName(text: string): string {
  return plainText(text).replace(/\s+/g, ' ').trim();
}
