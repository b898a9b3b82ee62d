/** Words about a file and a moment → its name, one that every system takes: "Mara-review-2026-11-25.zip". */
export function fileNameOf(words: readonly string[], madeMs: number, ending: string): string {
  const parts = words.map((word) =>
    word
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40),
  );
  const day = new Date(madeMs).toISOString().slice(0, 10);
  return `${[...parts, day].filter((part) => part !== '').join('-')}.${ending}`;
}

/** Hands bytes to the browser's download, under a name. */
export function saveBytes(bytes: ArrayBuffer, type: string, name: string): void {
  saveBlob(new Blob([bytes], { type }), name);
}

/** The same for what is a file already. */
export function saveBlob(file: Blob, name: string): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
