/** A file's size as it is read: 1.1 MB. Thousands are thousands (IEC 80000-13 keeps MB for 10⁶ bytes). */
export function bytesWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  const [size, unit] = bytes < 999_500 ? [bytes / 1e3, "kB"] : [bytes / 1e6, "MB"];
  return `${size < 10 ? size.toFixed(1) : Math.round(size)} ${unit}`;
}
