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
