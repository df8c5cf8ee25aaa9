months <- function(n, p) {
  units <- sizes(n, 400); units[runif(n) < .05] <- 0
  data.frame(events = rbinom(n, units, pmin(.98, pmax(.01, p + rnorm(n, 0, sample(c(0, .05), 1))))), units = units)
}
# Distances between neighbours, none across a gap.
moving <- function(y) mean(abs(diff(y)), na.rm = TRUE)

keep("p-chart", "plain R: three binomial standard errors around the pooled rate", lapply(seq_len(200), function(i) {
  repeat { d <- months(sample(4:24, 1), runif(1)); at <- sum(d$events) / sum(d$units); if (isTRUE(at > 0 && at < 1)) break }
  gap <- d$units == 0; reach <- 3 * sqrt(at * (1 - at) / d$units)
  list(events = d$events, units = d$units, centre = at, lower = ifelse(gap, NA, pmax(0, at - reach)), upper = ifelse(gap, NA, pmin(1, at + reach)))
}))

keep("p-prime-chart", "plain R: Laney 2002 with d2 = 1.128; the choice by qchisq(.95, df)", lapply(seq_len(200), function(i) {
  repeat {
    d <- months(sample(8:24, 1), runif(1)); at <- sum(d$events) / sum(d$units); gap <- d$units == 0
    error <- sqrt(at * (1 - at) / d$units); z <- ifelse(gap, NA, (d$events / d$units - at) / error); s <- moving(z) / 1.128
    if (isTRUE(at > 0 && at < 1 && s > 0)) break
  }
  prime <- sum(z^2, na.rm = TRUE) > qchisq(.95, sum(!gap) - 1)
  list(events = d$events, units = d$units, centre = at, sigmaZ = s, prime = prime, lower = ifelse(gap, NA, pmax(0, at - 3 * s * error)),
    upper = ifelse(gap, NA, pmin(1, at + 3 * s * error)))
}))

keep("u-chart", "plain R: three Poisson standard errors around the pooled rate", lapply(seq_len(200), function(i) {
  n <- sample(4:24, 1); exposure <- exp(runif(n, -1, 5)); exposure[runif(n) < .05] <- 0
  events <- rpois(n, exposure * runif(1, .02, 2)); if (sum(events) == 0) { exposure[1] <- 3; events[1] <- 1 }
  at <- sum(events) / sum(exposure); gap <- exposure == 0; reach <- 3 * sqrt(at / exposure)
  list(events = events, exposure = exposure, centre = at, lower = ifelse(gap, NA, pmax(0, at - reach)), upper = ifelse(gap, NA, at + reach))
}))

keep("g-chart", "qgeom at .00135, .5 and .99865 with p = 1 / (1 + mean)", lapply(seq_len(200), function(i) {
  p <- sample(c(.0005, .003, .02, .1, .4), 1); gaps <- rgeom(sample(3:20, 1), p); open <- rgeom(1, p)
  if (sum(gaps) == 0) gaps[1] <- 2
  at <- 1 / (1 + mean(gaps))
  list(gaps = gaps, open = open, probability = at, centre = qgeom(.5, at), lower = qgeom(.00135, at), upper = qgeom(.99865, at))
}))

keep("t-chart", "plain R: Nelson 1994, XmR with 3 / 1.128 to six decimals on t^(1/3.6)", lapply(seq_len(200), function(i) {
  days <- rexp(sample(3:20, 1), 1 / sample(c(3, 30, 200), 1)); if (i %% 2) days <- floor(days) + seq_along(days) %% 2
  y <- days^(1 / 3.6); reach <- round(3 / 1.128, 6) * moving(y)
  list(days = days, centre = mean(y)^3.6, lower = max(0, mean(y) - reach)^3.6, upper = (mean(y) + reach)^3.6)
}))

keep("xmr-chart", "plain R: mean and 3 / 1.128 to six decimals times the mean moving range", lapply(seq_len(200), function(i) {
  k <- sample(6:24, 1); n <- sample(8:32, k, replace = TRUE); value <- round(rnorm(k, 40, 9), 1)
  value[runif(k) < .06] <- NA; value[1:2] <- c(31, 44.5); n[1:2] <- c(12, 30)
  y <- ifelse(n < 10, NA, value); reach <- round(3 / 1.128, 6) * moving(y); size <- n[!is.na(y)]
  list(value = value, n = n, drawn = max(size) <= 4 * min(size), centre = mean(y, na.rm = TRUE), movingRange = moving(y),
    lower = mean(y, na.rm = TRUE) - reach, upper = mean(y, na.rm = TRUE) + reach)
}))
