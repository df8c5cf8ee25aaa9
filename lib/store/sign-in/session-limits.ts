/** Seconds without a request after which a session ends: an hour. */
export const idleSeconds = 3600;

/** Seconds after the sign-in at which a session ends, however busy it is: a working day. */
export const longestSeconds = 12 * 3600;

/** A use is written down at most once in so many seconds, so that reading a page is seldom a write. */
export const noticedEvery = 60;
