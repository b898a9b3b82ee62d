/** Hands bytes to the browser's download, under a name. */
export function saveBytes(bytes: ArrayBuffer, type: string, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
