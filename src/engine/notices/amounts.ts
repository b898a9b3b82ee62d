/** 12.34 → "12.3", −7 → "−7": a figure as it is written, with the sign of music and the decimal mark of the language. */
export function amount(value: number, decimals = 0, mark = '.'): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')).replace('.', mark);
}
