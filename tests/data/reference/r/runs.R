keep("run-chart", "rle, round(log2(n) + 3) and qbinom(.05, n - 1, 1/2)", lapply(seq_len(210), function(i) {
  values <- round(rnorm(sample(5:60, 1), 50, 10), 0)
  if (i %% 2 == 0) values <- sort(values)[order(order(values) + rnorm(length(values), 0, 6))]
  values[runif(length(values)) < .1] <- NA
  centre <- median(values, na.rm = TRUE)
  side <- sign(values - centre); side <- side[!is.na(side) & side != 0]
  n <- length(side)
  list(values = I(values), centre = centre, useful = n, longestRun = if (n == 0) 0 else max(rle(side)$lengths), crossings = max(0, length(rle(side)$lengths) - 1),
    longestLimit = if (n < 10) NA else round(log2(n) + 3), crossingsLimit = if (n < 10) NA else qbinom(.05, n - 1, .5))
}))

keep("bernoulli-cusum", "plain R: one loop (Steiner 2000, Biostatistics 1:441)", lapply(seq_len(200), function(i) {
  n <- sample(10:45, 1); baseline <- if (i %% 2) rep(runif(1, .01, .3), n) else runif(n, .005, .4)
  outcomes <- rbinom(n, 1, pmin(1, 1.6 * baseline)); or <- sample(c(2, 2, 1.5, 3), 1); limit <- runif(1, .5, 4)
  s <- 0; path <- numeric(n); signals <- integer(0)
  for (j in seq_len(n)) {
    s <- max(0, s + outcomes[j] * log(or) - log(1 + baseline[j] * (or - 1)))
    path[j] <- s
    if (s >= limit) { signals <- c(signals, j - 1); s <- 0 }
  }
  list(outcomes = outcomes, baseline = if (i %% 2) baseline[1] else baseline, oddsRatio = or, limit = limit, path = path, signals = I(signals))
}))
