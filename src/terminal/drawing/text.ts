/** 92.4 → "+92", −3.2 → "−3"; what rounds to nought is "+0" */
export function signed(value: number, digits = 0): string {
  const text = Math.abs(value).toFixed(digits);
  return `${value < 0 && Number(text) !== 0 ? '−' : '+'}${text}`;
}

/** Text → lines of at most `width` characters, broken between words; a longer word stands alone. */
export function wrapText(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/ +/)) {
    const line = lines.at(-1);
    if (line !== undefined && [...line].length + 1 + [...word].length <= width)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
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

/** Text → the same in ASCII; letters that have no stand-in become "?". */
export function toPlain(text: string): string {
  // eslint-disable-next-line no-control-regex -- all that is not ASCII
  return text.replace(/[^\x00-\x7f]/gu, (sign) => PLAIN[sign] ?? '?');
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
