/**
 * Bytes 128 to 255 of the code pages in which old systems and German Windows write names (Unicode Consortium, mappings
 * VENDORS/MICSFT/PC/CP437.TXT and CP850.TXT; printed by Python's codecs). That of Windows itself, 1252, every TextDecoder knows.
 */
const CP437 =
  'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0';
const CP850 =
  'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈıÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u00ad±‗¾¶§÷¸°¨·¹³²■\u00a0';

const byTable =
  (upper: string) =>
  (bytes: Uint8Array): string =>
    Array.from(bytes, (byte) => (byte < 128 ? String.fromCharCode(byte) : upper[byte - 128]!)).join('');

/** Ways to read bytes that are no UTF-8, the likeliest first where none reads better. */
const PAGES: readonly ((bytes: Uint8Array) => string)[] = [
  byTable(CP850),
  byTable(CP437),
  (bytes) => new TextDecoder('windows-1252').decode(bytes),
];

/** Letters beyond ASCII of which most names in western Europe are made; common practice, no source. */
const COMMON = /[äöüßÄÖÜéèêëàâçñîïíôóûúùáåøæÅØÆÉ]/u;

/** How much a name reads as one: letters that names have, none that stand wrong (a capital in a word), no signs of drawing. */
function likeness(name: string): number {
  let sum = 0;
  for (const [at, sign] of [...name].entries()) {
    if (sign.codePointAt(0)! < 128) continue;
    const before = [...name][at - 1] ?? '';
    if (!/\p{L}/u.test(sign)) sum -= 1;
    else if (/\p{Lu}/u.test(sign) && /\p{Ll}/u.test(before)) sum -= 1;
    else sum += COMMON.test(sign) ? 2 : 1;
  }
  return sum;
}

/** Names in bytes that are no UTF-8, all of one archive → the page in which they read best together. */
export function readerOf(names: readonly Uint8Array[]): (bytes: Uint8Array) => string {
  const [best] = PAGES.map((read) => ({
    read,
    likeness: names.reduce((sum, bytes) => sum + likeness(read(bytes)), 0),
  })).sort((a, b) => b.likeness - a.likeness);
  return best!.read;
}
