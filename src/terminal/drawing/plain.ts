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
