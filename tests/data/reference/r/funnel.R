keep("false-discovery", "p.adjust(p, 'BH')", lapply(seq_len(210), function(i) {
  p <- runif(sizes(1, 30))^sample(c(1, 3, 8), 1)
  if (i %% 4 == 0) p <- round(p, 1)
  list(p = I(p), adjusted = I(p.adjust(p, "BH")))
}))

# Counts and units may be real: they have been divided by a design effect.
reaches <- function(x, n, theta) if (x <= 0) 1 else if (x > n) 0 else pbeta(theta, x, n - x + 1)
mid <- function(x, n, theta) (reaches(x, n, theta) + reaches(x + 1, n, theta)) / 2
two_sided <- function(x, n, theta) min(1, 2 * min(mid(x, n, theta), 1 - mid(x, n, theta)))

spread <- function(n) {
  units <- sizes(n, 3000); theta <- runif(n)^sample(c(1, 4), n, replace = TRUE)
  deff <- sample(c(1, 1.37, 2.5), n, replace = TRUE)
  x <- rbinom(n, units, pmin(1, theta * sample(c(.5, 1, 1.5, 2), n, replace = TRUE)))
  data.frame(x = x / deff, n = units / deff, theta = theta)
}
keep("tail-probability", "pbeta(theta, x, n - x + 1) as in the mid-P of real counts",
  each(rbind(spread(230), data.frame(x = c(0, 5, 0, 1, 1), n = c(5, 5, 200, 20, 1), theta = c(.1, .9, .01, .01, .5))),
    function(x, n, theta) {
      upper <- mid(x, n, theta)
      list(upper = upper, lower = 1 - upper, p = min(1, 2 * min(upper, 1 - upper)))
    }))

keep("funnel-limits", "plain R: qbinom interpolated by pbinom (Spiegelhalter 2005, Stat Med 24:1185, appendix)",
  each(data.frame(theta = runif(220)^2, n = sizes(220, 2000), tail = c(.001, .025, .975, .999)), function(theta, n, tail) {
    r <- qbinom(tail, n, theta)
    over <- (pbinom(r, n, theta) - tail) / dbinom(r, n, theta)
    list(limit = (r - over) / n)
  }))

keep("overdispersion", "plain R: z, phi and tau squared by moments (Spiegelhalter 2005)", lapply(seq_len(210), function(i) {
  k <- sample(2:20, 1); theta <- rbeta(1, 1, 4); n <- sizes(k, 400) + 3
  x <- rbinom(k, n, rbeta(k, theta * 20, (1 - theta) * 20))
  if (sum(x) == 0) x[1] <- 1
  if (sum(x) == sum(n)) x[1] <- x[1] - 1
  at <- sum(x) / sum(n); z <- (x - n * at) / sqrt(n * at * (1 - at)); phi <- mean(z^2); w <- n / (at * (1 - at))
  list(events = x, units = n, theta = at, z = z, phi = phi, tau2 = max(0, (k * phi - k + 1) / (sum(w) - sum(w^2) / sum(w))))
}))

keep("detectable", "plain R: the count by pbinom, then uniroot on its upper tail",
  each(data.frame(n = c(sizes(210, 3000), 5, 1, 10), theta = c(runif(210)^3, .9, .2, .5), tail = .05 / (2 * sample(c(1, 5, 20), 213, replace = TRUE)),
                  power = sample(c(.5, .8, .9), 213, replace = TRUE)), function(n, theta, tail, power) {
    x <- 0:n
    upper <- pbinom(x - 1, n, theta, lower.tail = FALSE) - dbinom(x, n, theta) / 2
    count <- x[upper < tail]
    list(detectable = if (length(count) == 0) NA else
      root(function(p) pbinom(count[1] - 1, n, p, lower.tail = FALSE) - power, theta, 1))
  }))

keep("flags", 'plain R: pbeta at counts over the design effect, p.adjust by BH, tiers at .05 and .002', lapply(seq_len(200), function(i) {
  m <- sample(1:12, 1); theta <- runif(1, .01, .9); deff <- sample(c(.8, 1, 1.6), 1)
  n <- sizes(m, 600); if (i %% 5 == 0) n[1] <- 0
  x <- rbinom(m, n, pmin(1, theta * sample(c(1, 1, 1, .3, 2), m, replace = TRUE)))
  shown <- n > 0; d <- max(1, deff); p <- rep(NA, m)
  p[shown] <- mapply(two_sided, x[shown] / d, n[shown] / d, theta)
  adjusted <- p.adjust(p, "BH")
  list(events = I(x), units = I(n), theta = theta, deff = deff, m = sum(shown), p = I(p), adjusted = I(adjusted),
    tier = I(ifelse(is.na(adjusted), NA, ifelse(adjusted < .002, 2, ifelse(adjusted < .05, 1, 0)))))
}))
