/** "Mira Ohm" → "attempts-mira-ohm-2026-11-25.zip" */
export function fileName(student: string, madeMs: number): string {
  const name = student
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return (
    ['attempts', ...(name === '' ? [] : [name]), new Date(madeMs).toISOString().slice(0, 10)].join('-') +
    '.zip'
  );
}
