/** The key of the other mode with the same signature, spelt the same way: A♭ major and F minor. */
export function relativeOf(key: string, scale: readonly string[]): string {
  const minor = key.endsWith('minor');
  return `${scale[minor ? 2 : 5]!} ${minor ? 'major' : 'minor'}`;
}
