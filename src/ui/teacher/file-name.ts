/** A student's name, a word and a moment → a file's name that every system takes: "Mara-review-2026-11-25.zip". */
export function fileNameOf(student: string, word: string, madeMs: number, ending: string): string {
  const name = student
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  const day = new Date(madeMs).toISOString().slice(0, 10);
  return `${[name, word, day].filter((part) => part !== '').join('-')}.${ending}`;
}
