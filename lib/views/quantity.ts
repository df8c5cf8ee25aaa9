/** A number with a fixed count of decimals; a true minus sign. */
export function decimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

/** Whole numbers with a thin space between thousands. */
export function count(value: number): string {
  return String(value)
    .replace("-", "−")
    .replace(/\B(?=(\d{3})+(?!\d))/g, "\u202f");
}

/**
 * A share in per cent: two decimals under 10 %, else one. What is neither none nor all is never rounded to it.
 */
export function percent(share: number): string {
  if (share < 0) return `−${percent(-share)}`;
  if (share === 0) return "0 %";
  if (share === 1) return "100 %";
  const value = share * 100;
  const decimals = Number(value.toFixed(2)) < 10 ? 2 : 1;
  const smallest = 10 ** -decimals;
  if (value < smallest) return `under ${smallest} %`;
  if (value > 100 - smallest && value < 100) return `over ${decimal(100 - smallest, decimals)} %`;
  return `${decimal(value, decimals)} %`;
}

/** A share that was set and not measured, as a target or a level: no more decimals than it has. */
export function setShare(share: number): string {
  return `${Number((share * 100).toFixed(6))} %`;
}

/** Seconds as 4 min 49 s; under a minute with one decimal where there is one. What is not 0 is never shown as 0. */
export function duration(seconds: number): string {
  if (seconds < 0) return `−${duration(-seconds)}`;
  if (seconds > 0 && seconds < 0.05) return "under 0.1 s";
  if (Number(seconds.toFixed(1)) < 60)
    return `${decimal(seconds, Number.isInteger(seconds) ? 0 : 1)} s`;
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  if (minutes < 60) return `${minutes} min ${whole % 60} s`;
  const wholeMinutes = Math.round(seconds / 60);
  return `${Math.floor(wholeMinutes / 60)} h ${wholeMinutes % 60} min`;
}

/** A value of a continuous measure in its UCUM unit, with as many digits as it deserves. What is not 0 is never shown as 0. */
export function quantity(value: number, unit: string): string {
  if (unit === "s") return duration(value);
  if (value < 0) return `−${quantity(-value, unit)}`;
  if (value > 0 && value < 0.05) return `under 0.1 ${unit}`;
  return `${Number(value.toFixed(1)) < 100 ? decimal(value, 1) : count(Math.round(value))} ${unit}`;
}
