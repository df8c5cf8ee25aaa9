/** Shortest password that is taken, in characters. */
export const shortestPassword = 12;
