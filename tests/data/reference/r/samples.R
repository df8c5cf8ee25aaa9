keep("sample-size", "plain R: z²p(1 − p)/d², over one more than itself ÷ population (Cochran 1977), ceiling",
  each(data.frame(population = sizes(210, 20000), p = round(runif(210, .02, .98), 2), margin = sample(c(.01, .02, .05, .1), 210, replace = TRUE), level = level(210)),
    function(population, p, margin, level) {
      without <- qnorm(1 - (1 - level) / 2)^2 * p * (1 - p) / margin^2
      list(size = ceiling(without / (1 + without / population)))
    }))

# Of all counts of events that the population may hold, those that neither one-sided test refuses.
keep("hypergeometric", "phyper: every possible count of the population tested strictly at half of 1 − level",
  each(transform(data.frame(m = 0, n = sizes(220, 60), extra = sizes(220, 800) - 1, share = rates(220), level = level(220)),
                 population = n + extra, m = rbinom(220, n, share))[, c("m", "n", "population", "level")],
    function(m, n, population, level) {
      events <- m:(population - n + m); tail <- (1 - level) / 2
      kept <- events[phyper(m - 1, events, population - events, n, lower.tail = FALSE) > tail & phyper(m, events, population - events, n) > tail]
      list(lower = min(kept), upper = max(kept))
    }))
