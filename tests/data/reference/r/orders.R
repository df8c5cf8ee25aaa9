keep("quantile", "quantile(values, p, type = 7)", lapply(seq_len(220), function(i) {
  values <- if (i %% 2) round(rnorm(sizes(1, 40), 20, 8), 1) else rlnorm(sizes(1, 40))
  p <- if (i %% 10 == 0) sample(c(0, 1), 1) else if (i %% 3 == 0) .5 else runif(1)
  list(values = I(values), p = p, quantile = unname(quantile(values, p, type = 7)))
}))

# The largest k with 2·P(X < k) at most 1 − level is the quantile of the tail itself; 0 is none.
median_ranks <- function(n, level) {
  k <- qbinom((1 - level) / 2, n, .5)
  if (k == 0) return(list(lower = NA, upper = NA, coverage = NA))
  list(lower = k, upper = n + 1 - k, coverage = 1 - 2 * pbinom(k - 1, n, .5))
}
keep("median-ranks", "qbinom((1 - level) / 2, n, 1/2) and pbinom",
  each(rbind(data.frame(n = 1:120, level = .95), data.frame(n = sizes(140, 1e6), level = level(140))), median_ranks))
