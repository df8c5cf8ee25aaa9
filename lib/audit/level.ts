/** The level of every interval shown. */
export const level = 0.95;
