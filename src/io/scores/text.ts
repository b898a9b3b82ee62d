/** Bytes of a text file → its text, by its byte order mark, or by what an XML declaration says of itself (XML 1.0, 4.3.3); else UTF-8. */
export function textOf(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 200));
  const [, said = 'utf-8'] = /^\s*<\?xml[^>]*encoding=["']([\w.-]+)["']/.exec(head) ?? [];
  try {
    return new TextDecoder(said).decode(bytes);
  } catch {
    return new TextDecoder().decode(bytes);
  }
}
