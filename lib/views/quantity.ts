/** A number with a fixed count of decimals; a true minus sign. */
export function decimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

/** Whole numbers with a thin space between thousands. */
export function count(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+(?!\d))/g, "\u202f");
}

/**
 * A share in per cent: two decimals under 10 %, else one. What is neither none nor all is never rounded to it.
 */
export function percent(share: number): string {
  if (share === 0) return "0 %";
  if (share === 1) return "100 %";
  const decimals = share < 0.1 ? 2 : 1;
  const smallest = 10 ** -decimals;
  const value = share * 100;
  if (value < smallest) return `under ${smallest} %`;
  if (value > 100 - smallest) return `over ${decimal(100 - smallest, decimals)} %`;
  return `${decimal(value, decimals)} %`;
}

/** Seconds as 4 min 49 s; under a minute with one decimal where there is one. */
export function duration(seconds: number): string {
  if (seconds < 60) return `${decimal(seconds, Number.isInteger(seconds) ? 0 : 1)} s`;
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  if (minutes < 60) return `${minutes} min ${whole % 60} s`;
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** A value of a continuous measure in its UCUM unit, with as many digits as it deserves. */
export function quantity(value: number, unit: string): string {
  if (unit === "s") return duration(value);
  return `${decimal(value, value < 100 ? 1 : 0)} ${unit}`;
}
