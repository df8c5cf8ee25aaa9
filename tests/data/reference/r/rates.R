exposed <- function(n) rbind(
  data.frame(events = rpois(n, exp(runif(n, -2, 8.5))), exposure = exp(runif(n, -1, 7)), level = level(n)),
  data.frame(events = c(0, 1, 2, 5, 10), exposure = c(1, 1, 400, 1e6, .01), level = .95))

keep("poisson-exact", "poisson.test(events, exposure, conf.level = level)",
  each(exposed(215), function(events, exposure, level)
    ends(poisson.test(events, exposure, conf.level = level)$conf.int)))

keep("poisson-mid-p", "uniroot on ppois and half of dpois", each(exposed(215), function(events, exposure, level) {
  tail <- (1 - level) / 2
  high <- qgamma(1 - tail, events + 1) + 1
  lower <- function(m) ppois(events, m, lower.tail = FALSE) + dpois(events, m) / 2 - tail
  upper <- function(m) ppois(events - 1, m) + dpois(events, m) / 2 - tail
  list(lower = if (events == 0) 0 else root(lower, 0, high) / exposure, upper = root(upper, 0, high) / exposure)
}))
