# Random inputs; every family draws from these, after seeds of its own.

LEVELS <- c(.8, .9, .95, .95, .95, .99, .998)
level <- function(n) sample(LEVELS, n, replace = TRUE)
sizes <- function(n, most = 5000) pmax(1, floor(exp(runif(n, 0, log(most + 1)))))
rates <- function(n) sample(c(0, .002, .01, .03, .1, .3, .5, .7, .9, .97, 1), n, replace = TRUE)

counts <- function(n, most = 5000) {
  units <- sizes(n, most)
  edges <- expand.grid(n = c(1, 2, 5, 20, 300), share = c(0, 1))
  rbind(data.frame(x = rbinom(n, units, rates(n)), n = units, level = level(n)),
        data.frame(x = edges$share * edges$n, n = edges$n, level = .95))
}

root <- function(f, low, high) uniroot(f, c(low, high), tol = 1e-300, maxiter = 1e5)$root

# Clusters of units whose chance of an event varies from one cluster to the next.
clusters <- function(k, p, most = 5) {
  units <- sample(most, k, replace = TRUE)
  chance <- if (p <= 0 || p >= 1) rep(p, k) else rbeta(k, 4 * p, 4 * (1 - p))
  data.frame(events = rbinom(k, units, chance), units = units)
}
