const NO_BREAK = '\u00a0';

/** Words → the same, with no line's end between a number and its unit or its ±, within a tempo, or between a word and a lone note's name. */
export function unbroken(words: string): string {
  return words
    .replace(/(\d) (?=(?:ms|s|dB|%|cents?|Cent|octaves?|Oktaven?)(?![\p{L}]))/gu, `$1${NO_BREAK}`)
    .replace(/(?<=\p{Ll}{2}) (?=[A-H](?:[♭♯𝄫𝄪]|is|es|s)?(?![\p{L}–♭♯]))/gu, NO_BREAK)
    .replace(/± (?=\d)/g, `±${NO_BREAK}`)
    .replace(/(\p{So}\.?) = (?=\d)/gu, `$1${NO_BREAK}=${NO_BREAK}`);
}
