/** 92.4 → "+92", −3.2 → "−3"; what rounds to nought is "+0" */
export function signed(value: number, digits = 0): string {
  const text = Math.abs(value).toFixed(digits);
  return `${value < 0 && Number(text) !== 0 ? '−' : '+'}${text}`;
}
