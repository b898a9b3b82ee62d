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
