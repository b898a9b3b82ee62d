/** 92.4 → "+92", −3.2 → "−3"; what rounds to nought is "+0" */
export function signed(value: number, digits = 0): string {
  const text = Math.abs(value).toFixed(digits);
  return `${value < 0 && Number(text) !== 0 ? '−' : '+'}${text}`;
}

/** Where no line ends: between a number and its unit, about ± and =, between an option and its value. */
const HELD = /(?<=\d) (?=[\p{L}%±])|(?<=[±=]) | (?==)|(?<=(?:^| )--[a-z-]+) (?=[^-\s])/gu;
/** stands there while lines are broken (a word joiner, which no text here has) */
const JOINT = '\u2060';

/** Text → lines of at most `width` characters, broken between words; a longer word stands alone. */
export function wrapText(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.replace(HELD, JOINT).split(/ +/)) {
    const line = lines.at(-1);
    if (line !== undefined && [...line].length + 1 + [...word].length <= width)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines.map((line) => line.replaceAll(JOINT, ' '));
}

/** As much of a name's end as `width` characters hold. */
export function endOf(name: string, width: number): string {
  const letters = [...name];
  return letters.length <= width
    ? name
    : `…${letters.slice(letters.length - Math.max(0, width - 1)).join('')}`;
}

/** For terminals without Unicode: each sign → what stands for it in ASCII, of the same length where rows must line up. */
const PLAIN: Readonly<Record<string, string>> = {
  '●': 'O',
  '•': 'o',
  '∙': '.',
  '○': '_',
  '·': ':',
  '┬': '+',
  '─': '-',
  '╵': "'",
  '⌒': '^',
  '│': '|',
  '╱': '/',
  '╲': '\\',
  '♯': '#',
  '♭': 'b',
  '♮': 'n',
  '♩': '1/4',
  ä: 'ae',
  ö: 'oe',
  ü: 'ue',
  Ä: 'Ae',
  Ö: 'Oe',
  Ü: 'Ue',
  ß: 'ss',
  '„': '"',
  '×': 'x',
  '−': '-',
  '–': '-',
  '—': '-',
  '…': '...',
  '±': '+/-',
  '“': '"',
  '”': '"',
  '‘': "'",
  '’': "'",
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '█': '#',
  '░': '.',
};

/**
 * Text → the same in ASCII; letters lose their accents, and what has no stand-in becomes "?". What stands in columns stays there: a
 * gap gives up what its words have grown by.
 */
export function toPlain(text: string): string {
  let grown = 0;
  // eslint-disable-next-line no-control-regex -- all that is not ASCII
  return text.replace(/[^\x00-\x7f]| {2,}/gu, (found) => {
    if (found.startsWith(' ')) {
      const gap = ' '.repeat(Math.max(1, found.length - grown));
      grown = 0;
      return gap;
    }
    const plain = PLAIN[found] ?? /^[ -~]/.exec(found.normalize('NFD'))?.[0] ?? '?';
    grown += plain.length - 1;
    return plain;
  });
}

/** Controls but for the end of a line and the tabulator, and whatever turns the direction of writing (Unicode Standard Annex 9). */
// eslint-disable-next-line no-control-regex -- that is what it is about
const UNSAFE = /(\x1b\[[0-9;]*m)|[^\P{Cc}\n\t]|[\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;

/**
 * A line → the same without what a terminal would obey (ECMA-48): names of files come from outside. Colours and weights stay, with
 * which nothing can be moved, hidden or asked.
 */
export function harmless(line: string): string {
  return line.replace(UNSAFE, (_, look: string | undefined) => look ?? '\ufffd');
}
